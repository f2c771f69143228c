import { expect, test } from "vitest";
import { Approach } from "../../src/zeroing/approach";
import { takeReading } from "../../src/zeroing/takeReading";
import { usualRules } from "../../src/zeroing/zeroingRules";
import { ZeroLock } from "../../src/zeroing/zeroLock";

/** A lock that a hand has turned 40 to the right, onto zero. */
function onZero() {
  const lock = new ZeroLock({ indexOffset: 0, lostMotion: 1, noise: 0.25, start: 40 }, 100);
  const approach = new Approach(lock.dial);
  lock.turnBy(-40);
  approach.moveTo(lock.dial, 0);
  let drawn = 0;
  const chance = () => {
    drawn += 1;
    return 0.5;
  };
  const take = (now_ms: number) => takeReading({ lock, approach, chance }, "right", usualRules(100), now_ms);
  return { take, drawn: () => drawn };
}

test("one stop gives one reading, however often it is asked for", () => {
  const { take, drawn } = onZero();
  expect(take(400)).toMatchObject({ type: "reading.accepted", reading: { deviation: 0, cam: expect.closeTo(1, 9) } });
  for (const now of [401, 9000])
    expect(take(now)).toEqual({ type: "reading.refused", reason: "same-stop", deviation: 0 });
  expect(drawn()).toBe(1);
});

test("a refused reading costs another turn too", () => {
  const { take, drawn } = onZero();
  expect(take(100)).toEqual({ type: "reading.refused", reason: "not-at-rest", deviation: 0 });
  expect(take(9000)).toEqual({ type: "reading.refused", reason: "same-stop", deviation: 0 });
  expect(drawn()).toBe(0);
});
