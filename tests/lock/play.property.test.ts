import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { driven, lagging } from "../../src/lock/play";

/* Laws of the play operator: Krasnosel'skii and Pokrovskii, "Systems with Hysteresis" (1989), chapter 2. */

const place = fc.integer({ min: -100_000, max: 100_000 }).map((tenths) => tenths / 10);
const width = fc.integer({ min: 0, max: 200 }).map((tenths) => tenths / 10);
const play = fc.record({ right: width, left: width });
const NEAR = 1e-9;

describe("a part with play behind its driver", () => {
  test("is never farther from it than the room there is", () => {
    fc.assert(
      fc.property(place, place, play, (part, driver, room) => {
        const now = driven(part, driver, room);
        expect(now - driver).toBeGreaterThanOrEqual(-room.right - NEAR);
        expect(now - driver).toBeLessThanOrEqual(room.left + NEAR);
      }),
    );
  });

  test("stays where it is as long as it may", () => {
    fc.assert(
      fc.property(place, place, play, (part, driver, room) => {
        const mayStay = part >= driver - room.right && part <= driver + room.left;
        expect(driven(part, driver, room) === part).toBe(mayStay);
      }),
    );
  });

  test("goes as far in one move as in many the same way", () => {
    fc.assert(
      fc.property(
        place,
        fc.array(width, { minLength: 1, maxLength: 20 }),
        play,
        fc.boolean(),
        (start, moves, room, isLeft) => {
          const sign = isLeft ? 1 : -1;
          let [part, driver] = [start, start];
          for (const move of moves) {
            driver += sign * move;
            part = driven(part, driver, room);
          }
          expect(part).toBeCloseTo(driven(start, driver, room), 6);
        },
      ),
    );
  });

  test("turned to and fro, it moves by what goes beyond both rooms: the lost motion", () => {
    const room = { right: 0, left: 1.2 };
    const there = driven(0, 10, room);
    const back = driven(there, 0, room);
    expect([there, back]).toEqual([10, 1.2]);
    expect(driven(0, 0.7, lagging(0.8))).toBe(0);
    expect(driven(0, 2, lagging(0.8))).toBe(1.2);
  });
});
