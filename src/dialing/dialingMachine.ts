import { assign, emit, setup } from "xstate";
import type { Turn } from "../lock/dial";
import type { Profile } from "../lock/profile";
import type { DialingFact, Place } from "./dialingFact";

/** What the dialing chart takes in: facts of the engine, and the wish to start again. */
export type DialingEvent = DialingFact | { readonly type: "attempt.restarted" };

/** What the chart tells whoever listens: that an attempt has come to an end, by the bolt or by a refusal. */
export interface AttemptEnded {
  readonly type: "attempt.ended";
  readonly opened: boolean;
}

/** What the chart remembers beside its state. */
export interface DialingContext {
  /** Index of the number being dialed; the last one while drawing and after. */
  readonly number: number;
  /** How the number before was left, while a short turnback can still go back to it; else null. */
  readonly leftAt: Place | null;
}

/** The lock has answered, by the bolt or by a refusal; and what is done on it next is another attempt. */
type DialingTag = "answered" | "over";

/** What the operator is doing. */
export type DialingState =
  | "waiting"
  | "wrongWay"
  | "turning"
  | "resting"
  | "overrun"
  | "drawing"
  | "failed"
  | "open"
  | "thrown"
  | "secured";

/** The bolt has come, for the first time in the attempt. */
const OPENS = { target: "open", actions: ["finish", "tellOpened"] } as const;
/** The lock has refused, or forgotten what was dialed. */
const FAILS = { target: "failed", actions: ["finish", "tellRefused"] } as const;

const START: DialingContext = { number: 0, leftAt: null };

/**
 * The procedure of one lock as a chart: what may happen next, whoever turns the dial.
 *
 * It keeps no clock and knows no angle: the engine (`Attempt`) sends it finished facts. A turnback from `leftAt`
 * shorter than a quarter turn returns to the number it came from.
 */
export function dialingMachine(profile: Profile) {
  const last = profile.procedure.length - 1;
  const firstTurn: Turn | undefined = profile.procedure[0]?.turn;
  return setup({
    types: {
      context: {} as DialingContext,
      events: {} as DialingEvent,
      emitted: {} as AttemptEnded,
      tags: {} as DialingTag,
    },
    guards: {
      isFirstWay: ({ event }) => event.type === "run.begun" && event.turn === firstTurn,
      isLast: ({ context }) => context.number === last,
      turnsFirstWay: ({ context }) => profile.procedure[context.number]?.turn === firstTurn,
      mayGoRound: ({ context }) => profile.procedure[context.number]?.rule === "at-least",
      wasLeft: ({ context }, place: Place) => context.leftAt === place,
      holdsItsWheels: () => profile.kind === "wheel-pack",
      canTire: () => profile.kind === "dial-encoder" && profile.pauseLimit_s !== undefined,
    },
    actions: {
      startOver: assign(START),
      goToNext: assign(({ context }, leftAt: Place) => ({ number: context.number + 1, leftAt })),
      goToDraw: assign((_, leftAt: Place) => ({ leftAt })),
      goBack: assign(({ context }) => ({ number: context.number - 1, leftAt: null })),
      stayWith: assign({ leftAt: null }),
      finish: assign({ number: last, leftAt: null }),
      tellOpened: emit({ type: "attempt.ended", opened: true }),
      tellRefused: emit({ type: "attempt.ended", opened: false }),
    },
  }).createMachine({
    id: "dialing",
    context: START,
    initial: "waiting",
    on: { "attempt.restarted": { target: ".waiting", actions: "startOver" } },
    states: {
      waiting: {
        on: { "run.begun": [{ guard: "isFirstWay", target: "turning" }, { target: "wrongWay" }] },
      },
      wrongWay: {
        on: {
          "run.begun": { guard: "isFirstWay", target: "turning" },
          // A lock left at its combination opens to whoever draws first.
          "bolt.retracted": { guard: "holdsItsWheels", ...OPENS },
        },
      },
      turning: {
        on: {
          "number.reached": { target: "resting", actions: "stayWith" },
          "turn.reversed": [
            { guard: "isLast", target: "drawing", actions: { type: "goToDraw", params: "before" } },
            { target: "turning", actions: { type: "goToNext", params: "before" } },
          ],
          "turn.resumed": [
            { guard: { type: "wasLeft", params: "before" }, target: "turning", actions: "goBack" },
            { guard: { type: "wasLeft", params: "at" }, target: "resting", actions: "goBack" },
            { guard: { type: "wasLeft", params: "past" }, target: "overrun", actions: "goBack" },
          ],
          "fresh.started": { guard: "turnsFirstWay", target: "turning", actions: "startOver" },
          "bolt.retracted": OPENS,
          "pause.exceeded": { guard: "canTire", ...FAILS },
        },
      },
      resting: {
        on: {
          "number.passed": { target: "overrun" },
          "turn.reversed": [
            { guard: "isLast", target: "drawing", actions: { type: "goToDraw", params: "at" } },
            { target: "turning", actions: { type: "goToNext", params: "at" } },
          ],
          "fresh.started": { guard: "turnsFirstWay", target: "turning", actions: "startOver" },
          "bolt.retracted": OPENS,
          "pause.exceeded": { guard: "canTire", ...FAILS },
        },
      },
      overrun: {
        on: {
          "number.reached": { guard: "mayGoRound", target: "resting" },
          "turn.reversed": [
            { guard: "isLast", target: "drawing", actions: { type: "goToDraw", params: "past" } },
            { target: "turning", actions: { type: "goToNext", params: "past" } },
          ],
          "fresh.started": { guard: "turnsFirstWay", target: "turning", actions: "startOver" },
          "bolt.retracted": OPENS,
          "pause.exceeded": { guard: "canTire", ...FAILS },
        },
      },
      drawing: {
        on: {
          "turn.resumed": [
            { guard: { type: "wasLeft", params: "before" }, target: "turning", actions: "stayWith" },
            { guard: { type: "wasLeft", params: "at" }, target: "resting", actions: "stayWith" },
            { guard: { type: "wasLeft", params: "past" }, target: "overrun", actions: "stayWith" },
          ],
          "draw.refused": FAILS,
          "fresh.started": { target: "turning", actions: "startOver" },
          "bolt.retracted": OPENS,
          "pause.exceeded": { guard: "canTire", ...FAILS },
        },
      },
      failed: {
        tags: ["answered", "over"],
        on: {
          "fresh.started": { target: "turning", actions: "startOver" },
          "bolt.retracted": OPENS,
        },
      },
      open: {
        tags: "answered",
        on: { "bolt.thrown": { target: "thrown" } },
      },
      thrown: {
        tags: "answered",
        on: {
          // A wheel pack that has not been spun off still stands at its combination.
          "bolt.retracted": { target: "open" },
          "lock.cleared": { target: "secured" },
        },
      },
      secured: {
        tags: ["answered", "over"],
        // Dialed again where nobody has begun anew.
        on: { "bolt.retracted": { target: "open" } },
      },
    },
  });
}

/** Reading "resting on number 2": the chart's state in words that fit a sentence. */
export function stateInWords(state: DialingState, number: number): string {
  const words = STATE_WORDS[state];
  return typeof words === "string" ? words : words(number + 1);
}

const STATE_WORDS: Readonly<Record<DialingState, string | ((number: number) => string)>> = {
  waiting: "waiting for the first turn",
  wrongWay: "turning the wrong way",
  turning: (number) => `turning to number ${number}`,
  resting: (number) => `on number ${number}`,
  overrun: (number) => `past number ${number}`,
  drawing: "drawing the bolt",
  failed: "did not open",
  open: "open, at the positive stop",
  thrown: "bolt thrown, not spun off",
  secured: "secured",
};
