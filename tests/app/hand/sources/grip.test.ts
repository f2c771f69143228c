import { describe, expect, test } from "vitest";
import { Grip } from "../../../../src/app/hand/sources/grip";

const PER_TURN = 100;
const at = (clientX: number, clientY: number) => ({ clientX, clientY });
/** A point so many graduations left of straight up, 100 pixels from a middle. */
const round = (turned: number, [x, y]: readonly [number, number] = [0, 0]) => {
  const angle = (turned / PER_TURN) * 2 * Math.PI;
  return at(x - 100 * Math.sin(angle), y - 100 * Math.cos(angle));
};

describe("a grip", () => {
  test("turns by the angle that its pointer goes round the middle", () => {
    const grip = new Grip(PER_TURN);
    grip.place(at(0, 0));
    grip.hold(1, round(0));
    expect(grip.turn(1, round(20))).toBeCloseTo(20);
    expect(grip.turn(1, round(-10))).toBeCloseTo(-30);
  });

  test("does not turn when the dial moves under a pointer that does not, and then turns round the new middle", () => {
    const grip = new Grip(PER_TURN);
    grip.place(at(0, 0));
    grip.hold(1, round(0));
    grip.turn(1, round(20));
    grip.place(at(40, -30));
    expect(grip.turn(1, round(20))).toBeCloseTo(0);
    grip.turn(1, round(5, [40, -30]));
    expect(grip.turn(1, round(15, [40, -30]))).toBeCloseTo(10);
  });

  test("passes on to the pointer that waits, without a jump", () => {
    const grip = new Grip(PER_TURN);
    grip.place(at(0, 0));
    grip.hold(1, round(0));
    grip.hold(2, round(50));
    expect(grip.turn(2, round(60))).toBe(0);
    grip.release(1);
    expect(grip.turn(2, round(63))).toBeCloseTo(3);
  });

  test("that is lost turns nothing any more", () => {
    const grip = new Grip(PER_TURN);
    grip.place(at(0, 0));
    grip.hold(1, round(0));
    grip.hold(2, round(50));
    grip.releaseAll();
    expect(grip.isHeld).toBe(false);
    expect(grip.turn(1, round(20))).toBe(0);
    expect(grip.turn(2, round(20))).toBe(0);
  });

  test("turns nothing in the dead middle", () => {
    const grip = new Grip(PER_TURN);
    grip.place(at(0, 0));
    grip.hold(1, at(3, 3));
    expect(grip.turn(1, round(20))).toBe(0);
    expect(grip.turn(1, round(25))).toBeCloseTo(5);
  });
});
