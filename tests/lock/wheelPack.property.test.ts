import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reading } from "../../src/lock/dial";
import { WheelPack } from "../../src/lock/wheelPack";
import { FARTHEST } from "../../src/lock/wheelPackState";
import { exact, mirrored, moves, packOf, positionsOf, rounded, type Setup, setups, sum } from "./anyPack";
import { packProfile } from "./testPacks";

describe("a move", () => {
  test("may be split anywhere", () => {
    const ways = fc.constantFrom(1, -1);
    fc.assert(
      fc.property(setups("either"), moves, ways, exact(0, 1500), exact(0, 1500), (setup, first, way, one, two) => {
        const [split, whole] = [packOf(setup, first), packOf(setup, first)];
        split.turnBy(way * one);
        split.turnBy(way * two);
        whole.turnBy(way * (one + two));
        expect(split.state).toEqual(whole.state);
      }),
    );
  });

  test("may be split from one engagement to the stop, and from the stop to the throw of the bolt", () => {
    fc.assert(
      fc.property(setups("drops"), fc.array(exact(0, 40), { maxLength: 12 }), (setup, steps) => {
        const sign = setup.profile.draw.turn === "left" ? 1 : -1;
        const [split, whole] = [packOf(setup), packOf(setup)];
        const toStop = setup.parts.perTurn + setup.parts.travel;
        for (const step of [...steps, toStop]) split.turnBy(sign * step);
        whole.turnBy(sign * (toStop + sum(steps)));
        expect(split.state).toEqual(whole.state);
        expect(whole.retraction).toBe(1);
        const toThrow = -sign * (setup.parts.travel + 1 / 64);
        split.turnBy(toThrow + sign / 64);
        expect(split.retraction).toBe(0);
        expect(split.engagedAt).not.toBeNull();
        split.turnBy(-sign / 64);
        whole.turnBy(toThrow);
        expect(split.state).toEqual(whole.state);
        expect(split.engagedAt).toBeNull();
      }),
    );
  });

  test("to the right undoes one to the left only within the play", () => {
    fc.assert(
      fc.property(setups("rides"), exact(0, 400), (setup, by) => {
        const pack = packOf(setup);
        const before = positionsOf(pack.state);
        const [lead = 0, play = 0] = [setup.start.slack.at(-1), setup.parts.freePlay.at(-1)];
        pack.turnBy(by);
        pack.turnBy(-by);
        const after = positionsOf(pack.state);
        // The wheel at the cam is carried by what its lead leaves over, and kept there as far as the play reaches.
        expect((after.at(-1) ?? 0) - (before.at(-1) ?? 0)).toBe(Math.min(Math.max(0, by - lead), play - lead));
        if (by <= lead) expect(after).toEqual(before);
      }),
    );
  });
});

describe("clearing", () => {
  const ways = fc.constantFrom(1, -1);
  const restingOn = (setup: Setup, way: number) => (way > 0 ? setup.parts.freePlay.map(() => 0) : setup.parts.freePlay);

  test("n turns carry every one of n wheels, from any start", () => {
    fc.assert(
      fc.property(setups("rides"), moves, ways, (setup, first, way) => {
        const pack = packOf(setup, first);
        pack.turnBy(way * setup.parts.freePlay.length * setup.parts.perTurn);
        expect(pack.slack()).toEqual(restingOn(setup, way));
      }),
    );
  });

  test("n - 1 turns leave wheel 1 where it was when the play is a whole turn and all of it lies ahead", () => {
    fc.assert(
      fc.property(setups("rides"), ways, (setup, way) => {
        const freePlay = setup.parts.freePlay.map(() => setup.parts.perTurn);
        const slack = freePlay.map((play) => (way > 0 ? play : 0));
        const worst = {
          ...setup,
          profile: packProfile({ ...setup.parts, freePlay }),
          start: { ...setup.start, slack },
        };
        const pack = packOf(worst);
        const [wheelOne] = positionsOf(pack.state);
        pack.turnBy(way * (freePlay.length - 1) * setup.parts.perTurn);
        expect(positionsOf(pack.state)[0]).toBe(wheelOne);
        expect(pack.slack()[0]).toBe(slack[0]);
      }),
    );
  });
});

describe("whatever the hand does", () => {
  const wild = fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { maxLength: 12 });
  const inexact = fc.array(fc.oneof(rounded(-900, 900), rounded(-10, 10)), { maxLength: 12 });
  const anyHand = fc.oneof(moves, inexact, wild);

  test("slack, stands, errors and retraction keep their ranges", () => {
    fc.assert(
      fc.property(setups("either", rounded), anyHand, (setup, hand) => {
        const pack = packOf(setup, hand);
        const { perTurn, freePlay } = setup.parts;
        const isWithin = (low: number, high: number) => (value: number) => value >= low && value <= high;
        const stands = [...pack.stands(), reading(pack.dial, perTurn)];
        const errors = pack.errors();
        expect(pack.slack().filter((slack, k) => !isWithin(0, freePlay[k] ?? 0)(slack))).toEqual([]);
        expect(stands.filter((stand) => stand === perTurn || !isWithin(0, perTurn)(stand))).toEqual([]);
        expect(errors.filter((error) => error === -perTurn / 2 || !isWithin(-perTurn / 2, perTurn / 2)(error))).toEqual(
          [],
        );
        expect(pack.retraction).toSatisfy(isWithin(0, 1));
        expect([pack.dial, pack.engagedAt ?? 0].every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test("a picture of the pack restores it, and it goes on in the same way", () => {
    fc.assert(
      fc.property(setups("either"), moves, moves, (setup, before, after) => {
        const pack = packOf(setup, before);
        const restored = new WheelPack(setup.profile, setup.combination, pack.state);
        const reused = packOf(setup, after);
        reused.restore(pack.state);
        for (const one of [pack, restored, reused]) for (const by of after) one.turnBy(by);
        expect(restored.state).toEqual(pack.state);
        expect(reused.state).toEqual(pack.state);
      }),
    );
  });

  test("a picture restores even where positions are not exact", () => {
    fc.assert(
      fc.property(setups("either", rounded), fc.oneof(inexact, wild), (setup, hand) => {
        const { state } = packOf(setup, hand);
        const restored = new WheelPack(setup.profile, setup.combination, state).state;
        restored.slack.forEach((slack, k) => {
          expect(slack).toBeCloseTo(state.slack[k] ?? Number.NaN, 6);
        });
      }),
      { numRuns: 300 },
    );
  });

  test("the batch path ends where the moves one by one do", () => {
    fc.assert(
      fc.property(setups("either"), fc.array(exact(-2000, 2000), { maxLength: 20 }), (setup, hand) => {
        const [batch, single] = [packOf(setup), packOf(setup)];
        batch.turnThrough(hand);
        hand.slice(1).forEach((position, i) => {
          single.turnBy(position - (hand[i] ?? 0));
        });
        expect(batch.state).toEqual(single.state);
      }),
      { numRuns: 300 },
    );
  });

  test("a move that leads nowhere is refused and leaves the pack alone", () => {
    const nowhere = fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 3 * FARTHEST);
    fc.assert(
      fc.property(setups("either"), moves, nowhere, (setup, hand, by) => {
        const pack = packOf(setup, hand);
        const before = pack.state;
        expect(() => pack.turnBy(by)).toThrow(expect.objectContaining({ code: "too-far" }));
        expect(() => pack.turnThrough([0, by, 1])).toThrow(expect.objectContaining({ code: "too-far" }));
        expect(pack.state).toEqual(before);
      }),
    );
  });
});

test("a mirrored lock under a mirrored hand does the mirrored thing", () => {
  fc.assert(
    fc.property(setups("either"), moves, (setup, hand) => {
      const pack = packOf(setup, hand);
      const image = packOf(
        mirrored(setup),
        hand.map((by) => -by),
      );
      const { perTurn, freePlay } = setup.parts;
      expect(image.dial + pack.dial).toBe(0);
      expect((image.engagedAt ?? 0) + (pack.engagedAt ?? 0)).toBe(0);
      expect(image.engagedAt === null).toBe(pack.engagedAt === null);
      expect(image.retraction).toBe(pack.retraction);
      expect(image.slack()).toEqual(pack.slack().map((slack, k) => (freePlay[k] ?? 0) - slack));
      // Half a turn off is written with a plus on both sides of the mirror.
      const half = perTurn / 2;
      expect(image.errors()).toEqual(pack.errors().map((error) => (error === half ? half : 0 - error)));
      expect(image.stands()).toEqual(pack.stands().map((stand, k) => reading(sum(freePlay.slice(k)) - stand, perTurn)));
    }),
    { numRuns: 300 },
  );
});
