import { expect, test } from "vitest";
import { SteadyTime } from "../../../../src/app/sittings/session/steadyTime";

/** A wall clock and a steady one, both moved by hand. */
const clocks = (wall: number, steady = 0) => {
  const at = { wall, steady };
  const time = new SteadyTime({ wall: () => at.wall, steady: () => at.steady });
  const goOn = (by: number) => {
    at.wall += by;
    at.steady += by;
  };
  return { at, time, goOn };
};

test("goes on steadily when the clock is set back or forward, and notices each jump once", () => {
  const { at, time, goOn } = clocks(1_000_000, 500);
  expect(time.now()).toBe(1_000_000);
  goOn(10_000);
  at.wall -= 3_600_000;
  expect(time.now()).toBe(1_010_000);
  expect([time.takeJump(), time.takeJump()]).toEqual([-3_600_000, 0]);
  at.wall += 7_200_000;
  goOn(1000);
  expect(time.now()).toBe(1_011_000);
  expect([time.takeJump(), time.takeJump()]).toEqual([7_200_000, 0]);
});

test("a machine that slept has its time taken in, once, and a short nap has not", () => {
  const { at, time, goOn } = clocks(1_000_000);
  goOn(5000);
  at.wall += 300_000;
  expect(time.catchUp(time.takeJump())).toBe(300_000);
  expect(time.now()).toBe(1_305_000);
  goOn(1000);
  expect([time.takeJump(), time.now()]).toEqual([0, 1_306_000]);
  at.wall += 9000;
  expect(time.catchUp(time.takeJump())).toBe(0);
  expect(time.now()).toBe(1_306_000);
});

test("a clock that is set back, and put right again, brings no time", () => {
  const { at, time } = clocks(10_000_000);
  at.wall -= 3_600_000;
  expect(time.catchUp(time.takeJump())).toBe(0);
  at.wall += 3_600_000;
  expect(time.catchUp(time.takeJump())).toBe(0);
  expect(time.now()).toBe(10_000_000);
  at.wall -= 3_600_000;
  time.catchUp(time.takeJump());
  at.wall += 3_660_000;
  expect(time.catchUp(time.takeJump())).toBe(60_000);
  expect(time.now()).toBe(10_060_000);
});

test("a clock that is trimmed by little has not jumped", () => {
  const { at, time } = clocks(0);
  at.wall += 900;
  expect(time.takeJump()).toBe(0);
});

test("from page to page the wall tells how long it was", () => {
  const { time, goOn } = clocks(2_000_000);
  expect(time.goOnFrom(1_500_000, 1_990_000)).toBe(0);
  expect(time.now()).toBe(1_510_000);
  goOn(1000);
  expect([time.now(), time.takeJump()]).toEqual([1_511_000, 0]);
});

test("a clock set back between two pages is noticed, and takes no time back", () => {
  const { time } = clocks(1_000_000);
  expect(time.goOnFrom(5_000_000, 4_600_000)).toBe(-3_600_000);
  expect(time.now()).toBe(5_000_000);
});
