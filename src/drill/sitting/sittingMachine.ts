import { assign, setup } from "xstate";
import type { Milliseconds } from "../../lock/dial";
import { MOST_BEGUN_AGAIN } from "../marking/lostSight";
import { breakOpened, breaksClosed, ended, FRESH, type SittingContext, stopped, workedTime } from "./sittingMemory";

/** What a sitting's chart must know of its sheet. */
export interface SittingPlan {
  /** Tries in all, over all stations, an integer >= 1. */
  readonly tries: number;
  /** Knowledge questions after them; 0 for none. */
  readonly questions: number;
  readonly pauseAllowed: boolean;
  readonly onReload: "resume" | "broken-off";
  /** Longest working time, or null for any. */
  readonly timeLimit_ms: Milliseconds | null;
}

/** What the chart takes in. Time is part of what happened: the chart has no clock. */
export type SittingEvent =
  | { readonly type: "instructions.read" }
  | { readonly type: "sitting.started"; readonly now_ms: Milliseconds }
  | { readonly type: "try.begun"; readonly now_ms: Milliseconds }
  /** A device lost the hand, and by its station such a try is begun again. */
  | { readonly type: "try.begunAgain"; readonly now_ms: Milliseconds }
  | { readonly type: "try.finished"; readonly now_ms: Milliseconds }
  | { readonly type: "question.answered"; readonly now_ms: Milliseconds }
  | { readonly type: "sitting.paused"; readonly now_ms: Milliseconds }
  | { readonly type: "sitting.resumed"; readonly now_ms: Milliseconds }
  /** The page was loaded anew; `now_ms` is the last moment that was recorded before. */
  | { readonly type: "page.reloaded"; readonly now_ms: Milliseconds }
  | { readonly type: "time.checked"; readonly now_ms: Milliseconds }
  | { readonly type: "sitting.abandoned"; readonly now_ms: Milliseconds };

/** What the candidate is doing. */
export type SittingState =
  | "readingInstructions"
  | "ready"
  | "atStation"
  | "paused"
  | "interrupted"
  | "answering"
  | "finished"
  | "brokenOff";

/** Time of an event, where it has one. */
const timeOf = (event: SittingEvent): Milliseconds => ("now_ms" in event ? event.now_ms : 0);

/**
 * One sitting as a chart: instructions and cautions, ready, the tries, the questions, the end.
 *
 * It keeps no clock and knows no lock: whoever runs it sends finished facts with their times, and saves its snapshot. A
 * page that was reloaded revives the snapshot and says so; then the sheet's rule decides. A try under way is lost, so
 * that a reload is no second chance; where the sheet allows no pause the clock runs on, so that it is no pause either.
 */
export function sittingMachine(plan: SittingPlan) {
  const sitting = setup({
    types: { context: {} as SittingContext, events: {} as SittingEvent },
    guards: {
      mayPause: () => plan.pauseAllowed,
      mayResume: () => plan.onReload === "resume",
      isOverTime: ({ context, event }) =>
        plan.timeLimit_ms !== null && workedTime(context, timeOf(event)) >= plan.timeLimit_ms,
      hasTriesLeft: ({ context }) => context.triesDone < plan.tries,
      hasNoTryLeft: ({ context }) => context.triesDone >= plan.tries,
      hasNoQuestionLeft: ({ context }) => context.answersGiven >= plan.questions,
      isTryBegun: ({ context }) => context.isTryBegun,
      mayBeginAgain: ({ context }) => context.isTryBegun && context.begunAgain < MOST_BEGUN_AGAIN,
      isTryNotBegun: ({ context }) => !context.isTryBegun,
    },
    actions: {
      startClock: assign(({ context, event }) => ({
        ...stopped(context, timeOf(event)),
        ...breaksClosed(context, timeOf(event)),
        runningSince_ms: timeOf(event),
      })),
      stopClock: assign(({ context, event }) => stopped(context, timeOf(event))),
      beginTry: assign({ isTryBegun: true }),
      finishTry: assign(({ context }) => ({ triesDone: context.triesDone + 1, isTryBegun: false, begunAgain: 0 })),
      beginAgain: assign(({ context }) => ({ isTryBegun: false, begunAgain: context.begunAgain + 1 })),
      takeAnswer: assign(({ context }) => ({ answersGiven: context.answersGiven + 1 })),
      countPause: assign(({ context, event }) => ({
        ...breakOpened("pause", context, timeOf(event)),
        pauses: context.pauses + 1,
      })),
      stopClockWherePausesAre: assign(({ context, event }) =>
        plan.pauseAllowed ? stopped(context, timeOf(event)) : {},
      ),
      countInterruption: assign(({ context, event }) => ({
        ...breakOpened("reload", context, timeOf(event)),
        interruptions: context.interruptions + 1,
        triesDone: context.triesDone + (context.isTryBegun ? 1 : 0),
        triesLost: context.triesLost + (context.isTryBegun ? 1 : 0),
        isTryBegun: false,
        begunAgain: context.isTryBegun ? 0 : context.begunAgain,
      })),
      runOut: assign(({ context, event }) => ({ ...ended(context, timeOf(event), "time"), isTryBegun: false })),
      complete: assign(({ context, event }) => ended(context, timeOf(event), "finished")),
      breakOff: assign(({ context, event }) => ended(context, timeOf(event), "broken-off")),
    },
  });
  const whileWorking = sitting.createStateConfig({
    on: {
      "page.reloaded": [
        { guard: "mayResume", target: "interrupted", actions: ["stopClockWherePausesAre", "countInterruption"] },
        { target: "brokenOff", actions: "breakOff" },
      ],
      "time.checked": { guard: "isOverTime", target: "finished", actions: "runOut" },
      "sitting.abandoned": { target: "brokenOff", actions: "breakOff" },
    },
  });
  const whileStanding = sitting.createStateConfig({
    on: {
      "sitting.resumed": [
        { guard: "hasTriesLeft", target: "atStation", actions: "startClock" },
        { target: "answering", actions: "startClock" },
      ],
      "sitting.abandoned": { target: "brokenOff", actions: "breakOff" },
    },
  });
  return sitting.createMachine({
    id: "sitting",
    context: FRESH,
    initial: "readingInstructions",
    states: {
      readingInstructions: { on: { "instructions.read": "ready" } },
      ready: { on: { "sitting.started": { target: "atStation", actions: "startClock" } } },
      atStation: {
        always: { guard: "hasNoTryLeft", target: "answering" },
        on: {
          ...whileWorking.on,
          "try.begun": { guard: "isTryNotBegun", actions: "beginTry" },
          "try.begunAgain": { guard: "mayBeginAgain", actions: "beginAgain" },
          "try.finished": [
            // A try that ends after the time is up is not made in time.
            { guard: "isOverTime", target: "finished", actions: "runOut" },
            { guard: "isTryBegun", actions: "finishTry" },
          ],
          "sitting.paused": {
            // Between tries only: a pause in mid-try would be a rest for the hand.
            guard: ({ context }) => plan.pauseAllowed && !context.isTryBegun,
            target: "paused",
            actions: ["stopClock", "countPause"],
          },
        },
      },
      paused: {
        on: {
          ...whileStanding.on,
          "page.reloaded": [
            { guard: "mayResume", target: "interrupted", actions: "countInterruption" },
            { target: "brokenOff", actions: "breakOff" },
          ],
        },
      },
      interrupted: {
        on: {
          ...whileStanding.on,
          "page.reloaded": { actions: "countInterruption" },
          // The clock runs on where the sheet allows no pause.
          "time.checked": { guard: "isOverTime", target: "finished", actions: "runOut" },
        },
      },
      answering: {
        always: { guard: "hasNoQuestionLeft", target: "finished", actions: "complete" },
        on: {
          ...whileWorking.on,
          "question.answered": [
            { guard: "isOverTime", target: "finished", actions: "runOut" },
            { actions: "takeAnswer" },
          ],
          "sitting.paused": { guard: "mayPause", target: "paused", actions: ["stopClock", "countPause"] },
        },
      },
      finished: { type: "final" },
      brokenOff: { type: "final" },
    },
  });
}
