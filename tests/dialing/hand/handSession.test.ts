import { describe, expect, test } from "vitest";
import { BREAKAWAY, DRAG_LAG } from "../../../src/dialing/hand/dialFeel";
import { HandSession, type HandSpec, type UnderHand } from "../../../src/dialing/hand/handSession";

/** A dial with stops on either side that takes down what it is told. */
class PlainDial implements UnderHand<string> {
  dial = 0;
  readonly told: (readonly [by: number, at: number])[] = [];
  private readonly end: number;

  constructor(end = Number.POSITIVE_INFINITY) {
    this.end = end;
  }

  turnBy(by: number, at: number): readonly string[] {
    this.told.push([by, at]);
    this.dial = Math.min(this.end, this.dial + by);
    return by === 0 ? [] : ["moved"];
  }
}

const handOn = (spec: HandSpec<string> = {}, end?: number) => {
  const dial = new PlainDial(end);
  return { dial, hand: new HandSession<string>(dial, spec) };
};

describe("a hand at a dial", () => {
  test("never lets time run back", () => {
    const { dial, hand } = handOn();
    hand.turnBy(1, 500);
    hand.turnBy(1, 480);
    expect(dial.told).toEqual([
      [1, 500],
      [1, 500],
    ]);
  });

  test("ends a rest just before it turns on, and only a rest", () => {
    const { dial, hand } = handOn();
    hand.turnBy(1, 100);
    hand.turnBy(1, 250);
    hand.turnBy(1, 401);
    expect(dial.told).toEqual([
      [1, 100],
      [1, 250],
      [0, 400],
      [1, 401],
    ]);
  });

  test("has not rested before it has turned", () => {
    const { dial, hand } = handOn();
    expect(hand.rest(1000)).toBe(false);
    hand.turnBy(1, 5000);
    expect(dial.told).toEqual([[1, 5000]]);
  });

  test("tells the chart first, then who listens, of a rest only where something came of it", () => {
    const order: string[] = [];
    const chart = { send: (fact: string) => order.push(`chart ${fact}`) };
    const { dial, hand } = handOn({ chart, heard: (facts, by) => order.push(`heard ${facts.join()} of ${by}`) });
    hand.turnBy(2, 10);
    expect(hand.rest(60)).toBe(false);
    dial.turnBy = () => ["tired"];
    expect(hand.rest(70)).toBe(true);
    expect(order).toEqual(["chart moved", "heard moved of 2", "chart tired", "heard tired of 0"]);
  });

  test("does nothing to a dial that is closed", () => {
    let isClosed = false;
    const { dial, hand } = handOn({ weight: "light", isClosed: () => isClosed });
    hand.turnBy(10, 100);
    expect(hand.isRunningOn).toBe(true);
    isClosed = true;
    expect([hand.turnBy(1, 200), hand.runOn(300), hand.rest(400), hand.isRunningOn]).toEqual(Array(4).fill(false));
    expect(dial.dial).toBe(10);
  });

  test("of a heavy dial gets ahead of it", () => {
    const { dial, hand } = handOn({ weight: "heavy" });
    hand.turnBy(BREAKAWAY, 0);
    expect([dial.told, hand.windUp]).toEqual([[], BREAKAWAY]);
    hand.turnBy(1, 10);
    expect(dial.dial).toBeCloseTo(BREAKAWAY + 1 - DRAG_LAG, 12);
  });

  test("of a light dial loses it to a stop", () => {
    const { dial, hand } = handOn({ weight: "light" }, 12);
    hand.turnBy(10, 100);
    expect(hand.runOn(200)).toBe(true);
    expect([dial.dial, hand.isRunningOn]).toEqual([12, false]);
  });

  // Whoever wants less motion sees the dial again only once it stands; its rest is looked at meanwhile.
  test("takes no dial that runs on for one that rests, however late it is looked at", () => {
    const { dial, hand } = handOn({ weight: "light" });
    hand.turnBy(10, 100);
    expect([hand.rest(300), hand.rest(500)]).toEqual([false, false]);
    hand.runOn(900);
    const moves = dial.told.map(([by]) => by);
    expect(moves.every((by) => by > 0)).toBe(true);
    const stoodFrom = 900 - hand.stoodFor(900);
    expect(stoodFrom).toBeLessThan(800);
    hand.rest(1400);
    expect(dial.told.at(-1)).toEqual([0, 1400]);
  });

  test("ends at the same place and time of a light dial, looked at in every frame or once", () => {
    const stoodAfter = (looks: readonly number[]) => {
      const { dial, hand } = handOn({ weight: "light" });
      hand.turnBy(10, 100);
      for (const at of looks) hand.runOn(at);
      return { at: dial.dial, stood: hand.stoodFor(1000) };
    };
    const frames = stoodAfter(Array.from({ length: 54 }, (_, k) => 116 + 16 * k));
    const once = stoodAfter([1000]);
    expect(once.at).toBeCloseTo(frames.at, 1);
    expect(Math.abs(once.stood - frames.stood)).toBeLessThanOrEqual(50);
  });
});
