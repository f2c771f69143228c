import { describe, expect, test } from "vitest";
import { PaintDelay } from "../../../../../src/app/hand/sources/devices/paintDelay";

/** A screen that paints when a test says so. */
function screen() {
  let due: ((at: number) => void)[] = [];
  const delay = new PaintDelay((painted) => due.push(painted));
  const paint = (at: number) => {
    const all = due;
    due = [];
    for (const painted of all) painted(at);
  };
  return { delay, paint };
}

describe("how long a hand takes to the screen", () => {
  test("is not said of a few moves", () => {
    const { delay, paint } = screen();
    for (let k = 0; k < 19; k++) {
      delay.moved(100 * k);
      paint(100 * k + 20);
    }
    expect(delay.summary).toBeNull();
    delay.moved(5000);
    expect(delay.summary).toBeNull();
    paint(5020);
    expect(delay.summary).toEqual({ middle: 20, most: 20 });
  });

  test("is that of the oldest move that a frame shows", () => {
    const { delay, paint } = screen();
    for (let k = 0; k < 40; k++) {
      for (const later of [0, 5, 10]) delay.moved(100 * k + later);
      paint(100 * k + 16);
    }
    expect(delay.summary).toEqual({ middle: 16, most: 16 });
  });

  test("is that of the last moves", () => {
    const { delay, paint } = screen();
    for (let k = 0; k < 400; k++) {
      delay.moved(1000 * k);
      paint(1000 * k + (k < 200 ? 500 : k % 10 === 0 ? 90 : 30));
    }
    expect(delay.summary).toEqual({ middle: 30, most: 90 });
  });
});
