import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import { opposite, type Turn } from "../../src/lock/dial";
import { REFUSALS } from "../../src/zeroing/approach";
import {
  settlingSpread,
  type ZeroingContext,
  type ZeroingEvent,
  type ZeroingState,
  zeroingMachine,
} from "../../src/zeroing/zeroingMachine";
import { usualRules, type ZeroingRules } from "../../src/zeroing/zeroingRules";

const deviation = fc.integer({ min: -96, max: 96 }).map((n) => n / 64);
const simple = ["ring.loosened", "series.restarted", "zeroing.restarted"] as const;
const event: fc.Arbitrary<ZeroingEvent> = fc.oneof(
  {
    weight: 30,
    arbitrary: deviation.map(
      (at): ZeroingEvent => ({ type: "reading.accepted", reading: { deviation: at / 3, cam: at } }),
    ),
  },
  { weight: 6, arbitrary: fc.constant<ZeroingEvent>({ type: "ring.clamped" }) },
  {
    weight: 6,
    arbitrary: fc
      .tuple(fc.constantFrom(...REFUSALS), deviation)
      .map(([reason, at]): ZeroingEvent => ({ type: "reading.refused", reason, deviation: at })),
  },
  {
    weight: 4,
    arbitrary: fc.constantFrom("right", "left").map((side): ZeroingEvent => ({ type: "series.reopened", side })),
  },
  { weight: 1, arbitrary: fc.constantFrom(...simple).map((type): ZeroingEvent => ({ type })) },
);
const rules = fc
  .record({
    wanted: fc.integer({ min: 2, max: 4 }),
    more: fc.integer({ min: 0, max: 4 }),
    consecutive: fc.boolean(),
    order: fc.constantFrom(["right", "left"] as const, ["left", "right"] as const),
  })
  .map(
    ({ wanted, more, consecutive, order }): ZeroingRules => ({
      ...usualRules(100),
      wanted,
      most: wanted + more,
      consecutive,
      order,
    }),
  );
const stories = fc.tuple(rules, fc.array(event, { maxLength: 60 }));

interface Look {
  readonly value: ZeroingState;
  readonly context: ZeroingContext;
}

/** Checks every step of any story: the state before, the event, the state after. */
function everyStep(check: (rules: ZeroingRules, before: Look, event: ZeroingEvent, after: Look) => void): void {
  fc.assert(
    fc.property(stories, ([asked, events]) => {
      const chart = createActor(zeroingMachine(asked)).start();
      for (const one of events) {
        const before = chart.getSnapshot();
        chart.send(one);
        check(asked, before, one, chart.getSnapshot());
      }
    }),
    { numRuns: 300 },
  );
}

const TURNS = ["right", "left"] as const;

/** The side whose series is open, or null. */
function openSide({ order }: ZeroingRules, { value }: Look): Turn | null {
  if (value === "firstSeries") return order[0];
  return value === "secondSeries" ? order[1] : null;
}

/** What an event tells of a reading; null where it is none. */
function readIn(one: ZeroingEvent) {
  if (one.type === "reading.refused") return { deviation: one.deviation, refusal: one.reason };
  return one.type === "reading.accepted" ? { deviation: one.reading.deviation, refusal: null } : null;
}

describe("in any story of a zero calibration", () => {
  test("a zero that is set has its readings from both sides, and the last of them agree", () => {
    everyStep((asked, _before, _event, { value, context }) => {
      if (value !== "zeroSet") return;
      for (const turn of TURNS) {
        expect(context.accepted[turn].length).toBeGreaterThanOrEqual(asked.wanted);
        expect(settlingSpread(context.accepted[turn], asked)).toBeLessThanOrEqual(asked.spreadLimit);
      }
    });
  });

  test("the first series is never read while the second is open, nor the second before it", () => {
    everyStep((asked, before, _event, after) => {
      const side = openSide(asked, before);
      if (side === null || openSide(asked, after) !== side) return;
      expect(after.context.accepted[opposite(side)]).toEqual(before.context.accepted[opposite(side)]);
    });
  });

  test("a side has never more readings than the most allowed", () => {
    everyStep((asked, _before, _event, { context }) => {
      for (const turn of TURNS) expect(context.accepted[turn].length).toBeLessThanOrEqual(asked.most);
    });
  });

  test("it ends as not set only with the most readings, still apart", () => {
    everyStep((asked, before, _event, { value, context }) => {
      if (value !== "notSet" || before.value === "notSet") return;
      const side = openSide(asked, before) ?? asked.order[0];
      expect(context.accepted[side]).toHaveLength(asked.most);
      expect(settlingSpread(context.accepted[side], asked)).toBeGreaterThan(asked.spreadLimit);
    });
  });

  test("a miss costs no accepted reading, unless they must be made in a row; then it costs the series", () => {
    everyStep((asked, before, one, { value, context }) => {
      const side = openSide(asked, before);
      if (one.type !== "reading.refused" || side === null) return;
      expect(value).toBe(before.value);
      const kept = before.context.accepted;
      expect(context.accepted).toEqual(asked.consecutive ? { ...kept, [side]: [] } : kept);
    });
  });

  test("what the last reading came to is remembered until a side is begun again, or one more is asked for", () => {
    everyStep((asked, before, one, { context }) => {
      const side = openSide(asked, before);
      const read = side === null ? null : readIn(one);
      const left = context === before.context ? before.context.last : null;
      const last = side !== null && read !== null ? { side, ...read, accepted: context.accepted[side].length } : left;
      expect(context.last).toEqual(last);
    });
  });

  test("the reasons add up to the misses", () => {
    everyStep((_asked, _before, _event, { context }) => {
      const sum = Object.values(context.reasons).reduce((a, b) => a + b, 0);
      expect(sum).toBe(context.refused.right + context.refused.left);
    });
  });

  test("a ring that is loosened takes every reading with it", () => {
    everyStep((_asked, before, one, { value, context }) => {
      if (one.type !== "ring.loosened" || before.value === "ringLoose") return;
      expect([value, context.accepted]).toEqual(["ringLoose", { right: [], left: [] }]);
    });
  });
});

const accepted = (deviation: number): ZeroingEvent => ({ type: "reading.accepted", reading: { deviation, cam: 0 } });

function told(asked: ZeroingRules, events: readonly ZeroingEvent[]) {
  const chart = createActor(zeroingMachine(asked)).start();
  for (const one of [{ type: "ring.clamped" } as const, ...events]) chart.send(one);
  return chart.getSnapshot();
}

describe("a series", () => {
  const usual = usualRules(100);
  test.each([
    { why: "closes with three that agree", at: [0, 0.1, 0.6], value: "secondSeries" },
    { why: "stays open with three that do not", at: [0, 0.1, 0.61], value: "firstSeries" },
    {
      why: "is mended by further ones, though its whole spread never shrinks",
      at: [1.5, 0, 0.1, 0.2],
      value: "secondSeries",
    },
    { why: "stays open while the last ones disagree", at: [1.5, 0, 1.5, 0, 1.5, 0, 1.5], value: "firstSeries" },
    { why: "ends as not set after eight", at: [1.5, 0, 1.5, 0, 1.5, 0, 1.5, 0], value: "notSet" },
    { why: "is saved by the eighth", at: [1.5, 0, 1.5, 0, 1.5, 0, 0, 0], value: "secondSeries" },
  ])("$why", ({ at, value }) => {
    expect(told(usual, at.map(accepted)).value).toBe(value);
  });

  test("keeps the reading that did not agree: it counts in the result", () => {
    expect(told(usual, [1.5, 0, 0.1, 0.2].map(accepted)).context.accepted.right).toHaveLength(4);
  });

  test("in a row begins anew with a miss", () => {
    const miss: ZeroingEvent = { type: "reading.refused", reason: "too-short", deviation: 0 };
    const events = [accepted(0), accepted(0), miss, accepted(0), accepted(0)];
    expect(told({ ...usual, consecutive: true }, events)).toMatchObject({ value: "firstSeries" });
    expect(told(usual, events.slice(0, 4))).toMatchObject({ value: "secondSeries" });
  });

  test("reopened takes one more reading and goes back to where it was", () => {
    const set = Array.from({ length: 6 }, () => accepted(0));
    const reopened = (side: "right" | "left") => told(usual, [...set, { type: "series.reopened", side }]);
    expect([reopened("right").value, reopened("left").value]).toEqual(["firstSeries", "secondSeries"]);
    const more = told(usual, [...set, { type: "series.reopened", side: "right" }, accepted(0.1)]);
    expect([more.value, more.context.accepted.right.length, more.context.accepted.left.length]).toEqual([
      "zeroSet",
      4,
      3,
    ]);
  });

  test("that has the most allowed is not reopened", () => {
    const set = Array.from({ length: 6 }, () => accepted(0));
    const full = told({ ...usual, most: 3 }, [...set, { type: "series.reopened", side: "right" }]);
    expect(full.value).toBe("zeroSet");
  });
});
