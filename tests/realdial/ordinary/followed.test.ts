import { beforeAll, describe, expect, test } from "vitest";
import { OrdinaryFollower } from "../../../src/realdial/ordinary/follower";
import type { DialReference } from "../../../src/realdial/ordinary/reference";
import { motionOf } from "../../support/film/handMotion";
import { GRIPS, type OrdinaryFilm, ordinaryFilm } from "../../support/film/ordinaryFilm";
import { followedFilm, setUpByFilm } from "../../support/film/ordinaryTrial";
import { seeded } from "../../support/seeded";

const SEED = 11;
const FILM: Omit<OrdinaryFilm, "motion" | "chance"> = {
  camera: { width: 320, height: 240, focal: 300, tilt: 20, k1: -0.1 },
  radius: 85,
  fingers: GRIPS.tips,
  sensor: { moments: 1, exposureMs: 4 },
};

const setUp = (film: Partial<OrdinaryFilm> = {}) =>
  setUpByFilm({ ...FILM, ...film, chance: seeded(SEED) }, undefined, 5);

describe("an ordinary dial", () => {
  let reference: DialReference;

  beforeAll(() => {
    const learned = setUp();
    if ("code" in learned) throw new Error(learned.code);
    reference = learned;
  }, 60_000);

  test("is read from rest to rest, left and right, and never wrong when sure", () => {
    const motion = motionOf(
      [
        { by: 130, speed: 220, restMs: 300 },
        { by: -45, speed: 150, restMs: 300 },
      ],
      { restMs: 200 },
    );
    const followed = followedFilm(reference, ordinaryFilm({ ...FILM, motion, chance: seeded(SEED) }));
    expect(followed.wrong).toBe(0);
    expect(followed.inDoubt).toBe(0);
    expect(followed.sure).toBeGreaterThan(0.8 * followed.frames);
    expect(Math.max(...followed.atRest.map(Math.abs))).toBeLessThan(0.1);
    expect(Math.max(...followed.moving.map(Math.abs))).toBeLessThan(0.5);
    expect(followed.readings.at(-1)?.isStopped).toBe(true);
  });

  test("gives no reading of black pictures, and doubts the turns after a long one", () => {
    const motion = motionOf([{ by: 150, speed: 250, restMs: 200 }], { restMs: 200 });
    const isBlack = (at: number) => at > 500 && at < 1000;
    const { readings, wrong } = followedFilm(
      reference,
      ordinaryFilm({ ...FILM, motion, isBlack, chance: seeded(SEED) }),
    );
    expect(wrong).toBe(0);
    for (const { at, position, sight } of readings.filter(({ at }) => isBlack(at))) {
      expect({ at, position, sight }).toEqual({ at, position: null, sight: "no-sight" });
    }
    expect(readings.at(-1)?.turnsInDoubt).toBe(true);
  });

  test("is told where it rests: the turns are no longer in doubt", () => {
    const motion = motionOf([], { restMs: 700 });
    const shooting = ordinaryFilm({ ...FILM, motion, chance: seeded(SEED), isBlack: (at) => at > 100 && at < 600 });
    const { readings } = followedFilm(reference, shooting);
    expect(readings.some(({ turnsInDoubt }) => turnsInDoubt)).toBe(true);
    const follower = new OrdinaryFollower(reference);
    follower.setPosition(0);
    expect(follower.follow({ width: 320, height: 240, data: new Uint8Array(320 * 240) }, 0).turnsInDoubt).toBe(false);
  });
});

describe("what cannot be followed is refused", () => {
  test("a dial without numerals", () => {
    expect(setUp({ look: { numbered: 0 }, fingers: [] })).toEqual({ code: "no-numerals" });
  });

  test("a dial that is too small", () => {
    expect(setUp({ radius: 30 })).toMatchObject({ code: "too-small" });
  });
});
