import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { MovedValue } from "../../../../src/app/pictures/cutaway/movedValue";

/** Frames that the page was asked for. */
let frames: FrameRequestCallback[] = [];
const drawFrame = (after_ms: number) => {
  const asked = frames;
  frames = [];
  for (const one of asked) one(performance.now() + after_ms);
};

beforeEach(() => {
  frames = [];
  vi.stubGlobal("requestAnimationFrame", (callback: FrameRequestCallback) => frames.push(callback));
  vi.stubGlobal("cancelAnimationFrame", (number: number) => {
    frames = frames.filter((_, index) => index !== number - 1);
  });
});
afterEach(() => vi.unstubAllGlobals());

test("without a duration it is there at once, and tells it once", () => {
  const show = vi.fn();
  const moved = new MovedValue(0, show);
  moved.goTo(1, 0);
  moved.goTo(1, 0);
  expect(moved.now).toBe(1);
  expect(show).toHaveBeenCalledTimes(1);
  expect(frames).toEqual([]);
});

test("with one it sets out slowly, and arrives exactly", () => {
  const moved = new MovedValue(0, () => undefined);
  moved.goTo(1, 1000);
  drawFrame(500);
  expect(moved.now).toBeGreaterThan(0.2);
  expect(moved.now).toBeLessThan(0.4);
  drawFrame(1001);
  expect(moved.now).toBe(1);
  expect(frames).toEqual([]);
});

test("sent elsewhere on its way, it goes from where it is; stopped, it stays", () => {
  const moved = new MovedValue(0, () => undefined);
  moved.goTo(1, 1000);
  drawFrame(500);
  const half = moved.now;
  moved.goTo(0, 1000);
  expect(moved.now).toBe(half);
  expect(frames).toHaveLength(1);
  moved.stop();
  drawFrame(2000);
  expect(moved.now).toBe(half);
});
