import { assign, setup } from "xstate";
import type { Graduations, Turn } from "../lock/dial";
import { spread } from "../statistics/sample";
import { REFUSALS, type Refusal } from "./approach";
import type { ZeroingRules } from "./zeroingRules";

/** One accepted reading. */
export interface ZeroReading {
  /** Of the zero mark from the index as drawn, graduations, left positive. */
  readonly deviation: Graduations;
  /** What the encoder read at the cam, graduations. */
  readonly cam: Graduations;
}

/** What the zeroing chart takes in: finished facts about ring and readings, and the wish to begin again. */
export type ZeroingEvent =
  | { readonly type: "ring.clamped" }
  | { readonly type: "ring.loosened" }
  | { readonly type: "reading.accepted"; readonly reading: ZeroReading }
  | { readonly type: "reading.refused"; readonly reason: Refusal; readonly deviation: Graduations }
  | { readonly type: "series.restarted" }
  | { readonly type: "series.reopened"; readonly side: Turn }
  | { readonly type: "zeroing.restarted" };

/** What came of the last reading asked for. */
export interface LastReading {
  readonly side: Turn;
  readonly deviation: Graduations;
  readonly refusal: Refusal | null;
  /** How many readings of its side were accepted with it. */
  readonly accepted: number;
}

/** What the chart remembers. */
export interface ZeroingContext {
  readonly accepted: Readonly<Record<Turn, readonly ZeroReading[]>>;
  /** Refused readings in each series. */
  readonly refused: Readonly<Record<Turn, number>>;
  /** How often each reason was given, over both series; none is left out. */
  readonly reasons: Readonly<Record<Refusal, number>>;
  /** Accepted readings that close each series; more than the rules want where one was reopened. */
  readonly wanted: Readonly<Record<Turn, number>>;
  /** Null before any, and where readings are begun again or one more is asked for. */
  readonly last: LastReading | null;
}

type Refused = Extract<ZeroingEvent, { readonly type: "reading.refused" }>;

/** What the operator is doing. */
export type ZeroingState = "ringLoose" | "firstSeries" | "secondSeries" | "zeroSet" | "notSet";

/** Which direction is read in a state; null where none is. */
export function askedSide(state: ZeroingState, { order: [first, second] }: ZeroingRules): Turn | null {
  if (state === "firstSeries") return first;
  return state === "secondSeries" ? second : null;
}

const nothing = ({ wanted }: ZeroingRules): ZeroingContext => ({
  accepted: { right: [], left: [] },
  refused: { right: 0, left: 0 },
  reasons: noReasons(),
  wanted: { right: wanted, left: wanted },
  last: null,
});

const noReasons = () => Object.fromEntries(REFUSALS.map((reason) => [reason, 0])) as Record<Refusal, number>;

/**
 * Spread of the readings that say whether a series has settled: its last ones, as many as the rules want.
 *
 * Not of them all: that never shrinks, and further readings could not mend a series. Nothing is left out of the result
 * for it: there, all accepted readings count.
 *
 * @returns graduations; 0 where there is no reading
 */
export function settlingSpread(readings: readonly ZeroReading[], { wanted }: ZeroingRules): Graduations {
  return readings.length === 0 ? 0 : spread(readings.slice(-wanted).map(({ deviation }) => deviation));
}

/**
 * One zero calibration as a chart: the ring clamped, a series of readings from one side, a series from the other.
 *
 * It keeps no clock, knows no angle and judges no reading: whoever watches the dial sends it finished ones. A series
 * closes when it has the readings wanted and the last of them lie close enough; else it asks for more, up to the most
 * allowed, and then ends as not set. A zero that is set, but not yet shown to be good, can be given a further reading
 * from a side.
 */
export function zeroingMachine(rules: ZeroingRules) {
  const [first, second] = rules.order;
  const isSettled = (readings: readonly ZeroReading[]) => settlingSpread(readings, rules) <= rules.spreadLimit;
  const emptied = (context: ZeroingContext, side: Turn): Pick<ZeroingContext, "accepted" | "wanted"> => ({
    accepted: { ...context.accepted, [side]: [] },
    wanted: { ...context.wanted, [side]: rules.wanted },
  });
  const zeroing = setup({
    types: { context: {} as ZeroingContext, events: {} as ZeroingEvent },
    guards: {
      isClosed: ({ context }, side: Turn) =>
        context.accepted[side].length >= context.wanted[side] && isSettled(context.accepted[side]),
      isExhausted: ({ context }, side: Turn) =>
        context.accepted[side].length >= rules.most && !isSettled(context.accepted[side]),
      isReopened: ({ context, event }, side: Turn) =>
        event.type === "series.reopened" && event.side === side && context.accepted[side].length < rules.most,
    },
    actions: {
      accept: assign(({ context }, { side, reading }: { side: Turn; reading: ZeroReading }) => {
        const accepted = [...context.accepted[side], reading];
        return {
          accepted: { ...context.accepted, [side]: accepted },
          last: { side, deviation: reading.deviation, refusal: null, accepted: accepted.length },
        };
      }),
      refuse: assign(({ context }, { side, reason, deviation }: { side: Turn } & Omit<Refused, "type">) => {
        const left = rules.consecutive ? emptied(context, side) : { accepted: context.accepted };
        return {
          ...left,
          refused: { ...context.refused, [side]: context.refused[side] + 1 },
          reasons: { ...context.reasons, [reason]: context.reasons[reason] + 1 },
          last: { side, deviation, refusal: reason, accepted: left.accepted[side].length },
        };
      }),
      emptySeries: assign(({ context }, side: Turn) => ({ ...emptied(context, side), last: null })),
      wantOneMore: assign(({ context }, side: Turn) => ({
        wanted: { ...context.wanted, [side]: context.accepted[side].length + 1 },
        last: null,
      })),
      beginAgain: assign(nothing(rules)),
    },
  });
  /** Readings from one side, until the series closes or is exhausted. */
  const series = <Next extends string>(side: Turn, next: Next) =>
    zeroing.createStateConfig({
      always: [
        { guard: { type: "isClosed", params: side }, target: next },
        { guard: { type: "isExhausted", params: side }, target: "notSet" },
      ],
      on: {
        "reading.accepted": { actions: { type: "accept", params: ({ event }) => ({ side, reading: event.reading }) } },
        "reading.refused": { actions: { type: "refuse", params: ({ event }) => ({ ...event, side }) } },
        "series.restarted": { actions: { type: "emptySeries", params: side } },
        // A ring that moves makes every reading so far one of another index.
        "ring.loosened": { target: "ringLoose", actions: "beginAgain" },
      },
    });
  /** A closed series, taken up again. */
  const reopened = <Target extends string>(side: Turn, target: Target) =>
    ({
      guard: { type: "isReopened", params: side },
      target,
      actions: { type: "wantOneMore", params: side },
    }) as const;
  return zeroing.createMachine({
    id: "zeroing",
    context: nothing(rules),
    initial: "ringLoose",
    on: { "zeroing.restarted": { target: ".ringLoose", actions: "beginAgain" } },
    states: {
      ringLoose: { on: { "ring.clamped": "firstSeries" } },
      firstSeries: series(first, "secondSeries"),
      secondSeries: series(second, "zeroSet"),
      zeroSet: {
        on: {
          "series.reopened": [reopened(first, "firstSeries"), reopened(second, "secondSeries")],
          "ring.loosened": { target: "ringLoose", actions: "beginAgain" },
        },
      },
      notSet: { on: { "ring.loosened": { target: "ringLoose", actions: "beginAgain" } } },
    },
  });
}
