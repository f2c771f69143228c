import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import { Attempt } from "../../src/dialing/attempt";
import type { DialingFact } from "../../src/dialing/dialingFact";
import { dialingMachine } from "../../src/dialing/dialingMachine";
import { faultsAtEnd } from "../../src/dialing/fault";
import type { Graduations } from "../../src/lock/dial";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { batchArrivals, batchRuns, batchStopError } from "../support/batchReading";
import { handled } from "../support/handled";

const profile = shippedProfile("dial-encoder");
const COMBINATION = [43, 16, 58];

const played = (hand: readonly Graduations[]) => handled(profile, COMBINATION, { hand });
const firstRunOf = (hand: readonly Graduations[]) => played(hand).attempt.reader.legs[0]?.firstRun;

/** Where the dialing chart stands after a motion. */
function chartAfter(hand: readonly Graduations[]) {
  const chart = createActor(dialingMachine(profile)).start();
  for (const fact of played(hand).facts) chart.send(fact);
  const { value, context } = chart.getSnapshot();
  return { value, number: context.number + 1 };
}

describe("an encoder lock lets one go round again at every number", () => {
  test.each([
    { why: "four arrivals at the last number, as long as a first turn", hand: [0, 343, 116, 458, 442] },
    { why: "five at the first, five at the second and six at the last", hand: [0, 443, 16, 558, 543] },
    { why: "a first turn behind a spoiled entry, and from there a right one", hand: [0, 343, 116, 443, 216, 358, 343] },
    { why: "two spoiled entries and a right one", hand: [0, 343, 116, 443, 225, 543, 316, 458, 443] },
    { why: "the last number overrun and gone round again twice", hand: [0, 343, 116, 262, 458, 443] },
  ])("$why: it opens without a fault", ({ hand }) => {
    const { attempt } = played(hand);
    expect(attempt.opened).toBe(true);
    expect(faultsAtEnd(attempt)).toEqual([]);
  });
});

describe("a long first-direction turn under the last number", () => {
  test("is read as the last number while it lasts and while the turn after it may be a draw", () => {
    expect(firstRunOf([0, 343, 116, 443])).toBe(0);
    expect(chartAfter([0, 343, 116, 443]).number).toBe(3);
    expect(firstRunOf([0, 343, 116, 443, 403])).toBe(0);
    expect(chartAfter([0, 343, 116, 443, 403])).toEqual({ value: "drawing", number: 3 });
  });

  test("is read as a new first number once the turn after it is too long for a draw", () => {
    const hand = [0, 343, 116, 443, 402.9];
    expect(firstRunOf(hand)).toBe(2);
    expect(chartAfter(hand)).toEqual({ value: "turning", number: 2 });
    expect(
      played(hand)
        .facts.slice(-3)
        .map(({ type }) => type),
    ).toEqual(["fresh.started", "number.reached", "turn.reversed"]);
    expect(faultsAtEnd(played([...hand, 216, 358]).attempt).map(({ code }) => code)).toEqual(["not-drawn"]);
  });

  test("counts as a wrong try only when its draw is given up, and once", () => {
    const spoiled = [0, 345, 116, 458, 440];
    const refusals = (facts: readonly DialingFact[]) => facts.filter(({ type }) => type === "draw.refused").length;
    expect(refusals(played(spoiled).facts)).toBe(0);
    const given = played([...spoiled, 445, 430, 445]);
    expect(refusals(given.facts)).toBe(1);
    expect(given.attempt.memory.wrongTries).toBe(1);
    expect(played([0, 343, 116, 443, 216]).attempt.memory.wrongTries).toBe(0);
  });

  test("leaves the fault where it was made", () => {
    const { attempt } = played([0, 345, 116, 458, 442]);
    expect(attempt.opened).toBe(false);
    expect(faultsAtEnd(attempt)).toEqual([{ code: "ran-past", number: 1, size: 2 }]);
  });
});

test("a rest too long is forgotten however long the turn goes on: what was turned before it does not count", () => {
  const attempt = new Attempt(profile, COMBINATION, { dial: 0 });
  attempt.turnBy(100, 1000);
  attempt.turnBy(0, 40_000);
  attempt.turnBy(150, 41_000);
  attempt.turnBy(0, 80_000);
  const facts = [193, -227, 142, -15].flatMap((by, k) => [...attempt.turnBy(by, 81_000 + 1000 * k)]);
  expect(facts.map(({ type }) => type)).not.toContain("bolt.retracted");
  expect(attempt.opened).toBe(false);
});

/** The lock as the sentence says it: the last runs before a draw spell the combination, however many arrivals. */
function opensByTheSentence(positions: readonly Graduations[]): boolean {
  const runs = batchRuns(positions, profile.turnback);
  const { procedure, stopTolerance, graduations, draw } = profile;
  return runs.some((run, j) => {
    if (run.turn !== draw.turn || Math.abs(run.to - run.from) < draw.travel || j < procedure.length) return false;
    return procedure.every((step, k) => {
      const before = runs[j - procedure.length + k];
      const number = COMBINATION[k] ?? 0;
      return (
        before !== undefined &&
        before.turn === step.turn &&
        batchArrivals(before, number, graduations, stopTolerance) >= step.arrivals &&
        Math.abs(batchStopError(before, number, graduations)) <= stopTolerance
      );
    });
  });
}

test("whatever the hand does, it opens where the last runs before a draw spell the combination, and nowhere else", () => {
  // Stops on or near marks of the combination, with turns enough, too few and too many; every run may be any of them.
  const stop = fc.record({
    number: fc.constantFrom(...COMBINATION),
    turns: fc.integer({ min: 1, max: 5 }),
    off: fc.constantFrom(0, 0, 0, 0, 1, -1, 1.5, -15),
  });
  const tally = { opened: 0, refused: 0 };
  fc.assert(
    fc.property(fc.array(stop, { minLength: 3, maxLength: 7 }), (stops) => {
      let at = 0;
      const hand = [0];
      stops.forEach(({ number, turns, off }, k) => {
        const way = k % 2 === 0 ? 1 : -1;
        const first = way === 1 ? Math.floor((at - number) / 100) + 1 : Math.ceil((at - number) / 100) - 1;
        at = number + 100 * (first + way * (turns - 1)) + way * off;
        hand.push(at);
      });
      hand.push(at + (stops.length % 2 === 0 ? 15 : -15));
      const { attempt } = played(hand);
      expect(attempt.opened).toBe(opensByTheSentence(hand));
      tally[attempt.opened ? "opened" : "refused"] += 1;
    }),
    {
      numRuns: 6000,
      examples: [
        [
          [
            { number: 43, turns: 4, off: 0 },
            { number: 16, turns: 3, off: 0 },
            { number: 58, turns: 4, off: 0 },
          ],
        ],
      ],
    },
  );
  expect(tally.opened).toBeGreaterThan(5);
  expect(tally.refused).toBeGreaterThan(1000);
});
