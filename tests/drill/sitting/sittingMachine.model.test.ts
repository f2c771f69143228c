import { createTestModel } from "@xstate/test";
import { describe, expect, test } from "vitest";
import { createActor, type SnapshotFrom } from "xstate";
import {
  type SittingEvent,
  type SittingPlan,
  type SittingState,
  sittingMachine,
} from "../../../src/drill/sitting/sittingMachine";
import { type SittingContext, workedTime } from "../../../src/drill/sitting/sittingMemory";
import { drawnArrows } from "../../support/drawnArrows";
import { everyTransition } from "../../support/everyTransition";

type Machine = ReturnType<typeof sittingMachine>;
type Snapshot = SnapshotFrom<Machine>;

const MINUTE = 60_000;
/** Within the time limit, and beyond it. */
const TIMES = [MINUTE, 10 * MINUTE];
const TIMED = [
  "sitting.started",
  "try.begun",
  "try.begunAgain",
  "try.finished",
  "question.answered",
  "sitting.paused",
  "sitting.resumed",
  "page.reloaded",
  "time.checked",
  "sitting.abandoned",
] as const;

const EVENTS: readonly SittingEvent[] = [
  { type: "instructions.read" },
  ...TIMED.flatMap((type) => TIMES.map((now_ms) => ({ type, now_ms }))),
];

/** Events that the time limit decides about. */
const LIMITED: readonly SittingEvent["type"][] = ["try.finished", "question.answered", "time.checked"];

/** A clock that only goes on, late only where it matters, few pauses and interruptions: else there is no end of memories. */
const isWalked = ({ context }: Snapshot, event: SittingEvent): boolean => {
  const now = "now_ms" in event ? event.now_ms : MINUTE;
  if (now > MINUTE && !LIMITED.includes(event.type)) return false;
  const isFew = context.pauses + context.interruptions < 2;
  return isFew || (event.type !== "sitting.paused" && event.type !== "page.reloaded");
};

/**
 * The same sitting told once more, from the words of the issue alone: who may do what next. It shares no code with the
 * chart.
 */
class PlainSitting {
  state: SittingState = "readingInstructions";
  done = 0;
  lost = 0;
  answers = 0;
  isTrying = false;
  again = 0;
  workedBefore = 0;
  since: number | null = null;
  private readonly plan: SittingPlan;

  constructor(plan: SittingPlan) {
    this.plan = plan;
  }

  take(event: SittingEvent): void {
    const now = "now_ms" in event ? event.now_ms : 0;
    if (this.state === "finished" || this.state === "brokenOff") return;
    this.act(event, now);
  }

  private act(event: SittingEvent, now: number): void {
    const isWorking = this.state === "atStation" || this.state === "answering";
    const isLate = this.plan.timeLimit_ms !== null && this.worked(now) >= this.plan.timeLimit_ms;
    const acts: Record<SittingEvent["type"], () => void> = {
      "instructions.read": () => this.go("readingInstructions", "ready"),
      "sitting.started": () => this.state === "ready" && this.work(now),
      "try.begun": () => {
        if (this.state === "atStation") this.isTrying = true;
      },
      "try.begunAgain": () => this.state === "atStation" && this.beginAgain(),
      "try.finished": () => this.state === "atStation" && (isLate ? this.end(now) : this.finishTry(now)),
      "question.answered": () => this.state === "answering" && (isLate ? this.end(now) : this.answer(now)),
      "time.checked": () => (isWorking || this.state === "interrupted") && isLate && this.end(now),
      "sitting.paused": () => isWorking && this.plan.pauseAllowed && !this.isTrying && this.rest(now, "paused"),
      "sitting.resumed": () => (this.state === "paused" || this.state === "interrupted") && this.work(now),
      "page.reloaded": () => (isWorking || this.state === "paused" || this.state === "interrupted") && this.reload(now),
      "sitting.abandoned": () =>
        this.state !== "ready" && this.state !== "readingInstructions" && this.rest(now, "brokenOff"),
    };
    acts[event.type]();
  }

  worked(now: number): number {
    return this.workedBefore + (this.since === null ? 0 : Math.max(0, now - this.since));
  }

  private go(from: SittingState, to: SittingState): void {
    if (this.state === from) this.state = to;
  }

  private rest(now: number, state: SittingState): void {
    this.workedBefore = this.worked(now);
    this.since = null;
    this.state = state;
  }

  private end(now: number): void {
    this.isTrying = false;
    this.rest(now, "finished");
  }

  private work(now: number): void {
    this.workedBefore = this.worked(now);
    this.since = now;
    this.settle(now);
  }

  private settle(now: number): void {
    if (this.done < this.plan.tries) this.state = "atStation";
    else if (this.answers < this.plan.questions) this.state = "answering";
    else this.rest(now, "finished");
  }

  private finishTry(now: number): void {
    if (!this.isTrying) return;
    this.isTrying = false;
    this.again = 0;
    this.done += 1;
    this.settle(now);
  }

  private beginAgain(): void {
    if (!this.isTrying || this.again === 2) return;
    this.isTrying = false;
    this.again += 1;
  }

  private answer(now: number): void {
    this.answers += 1;
    this.settle(now);
  }

  private reload(now: number): void {
    if (this.plan.onReload === "broken-off") {
      this.rest(now, "brokenOff");
      return;
    }
    if (this.isTrying) {
      this.done += 1;
      this.lost += 1;
      this.again = 0;
    }
    this.isTrying = false;
    if (this.plan.pauseAllowed) this.rest(now, "interrupted");
    else this.state = "interrupted";
  }
}

/** The chart as the page runs it: after every event it is saved as JSON and revived, as after a crash. */
class SavedSitting {
  readonly plain: PlainSitting;
  private readonly machine: Machine;
  private saved: string;

  constructor(plan: SittingPlan) {
    this.plain = new PlainSitting(plan);
    this.machine = sittingMachine(plan);
    this.saved = JSON.stringify(createActor(this.machine).start().getPersistedSnapshot());
  }

  take(event: SittingEvent): void {
    const actor = createActor(this.machine, { snapshot: JSON.parse(this.saved) }).start();
    actor.send(event);
    this.saved = JSON.stringify(actor.getPersistedSnapshot());
    this.plain.take(event);
  }

  get snapshot(): { value: SittingState; context: SittingContext } {
    return JSON.parse(this.saved);
  }
}

const PLAN: SittingPlan = { tries: 2, questions: 1, pauseAllowed: true, onReload: "resume", timeLimit_ms: 5 * MINUTE };
const ALL = [
  "answering",
  "atStation",
  "brokenOff",
  "finished",
  "interrupted",
  "paused",
  "readingInstructions",
  "ready",
];
const but = (...missing: string[]) => ALL.filter((state) => !missing.includes(state));

const CASES = [
  { name: "pauses, resumes, questions, a time limit", plan: PLAN, states: ALL, transitions: 24 },
  {
    name: "no pause, broken off by a reload",
    plan: { ...PLAN, pauseAllowed: false, onReload: "broken-off" as const },
    states: but("paused", "interrupted"),
    transitions: 14,
  },
  {
    name: "no pause, and a reload that does not stop the clock",
    plan: { ...PLAN, pauseAllowed: false },
    states: but("paused"),
    transitions: 19,
  },
  {
    name: "pauses, but broken off by a reload",
    plan: { ...PLAN, onReload: "broken-off" as const },
    states: but("interrupted"),
    transitions: 20,
  },
  {
    name: "no questions, no time limit",
    plan: { ...PLAN, questions: 0, timeLimit_ms: null },
    states: but("answering"),
    transitions: 15,
  },
] satisfies { name: string; plan: SittingPlan; states: string[]; transitions: number }[];

const takenArrows = new Set<string>();

describe.each(CASES)("a sitting with $name", ({ plan, states, transitions }) => {
  const machine = sittingMachine(plan);
  const events = (state: Snapshot) => EVENTS.filter((event) => state.can(event) && isWalked(state, event));
  const paths = createTestModel(machine, everyTransition).getShortestPaths({ events });
  const drawn = drawnArrows(machine);

  test("its paths reach every state it has and take every transition it allows", () => {
    const reached = new Set(
      paths.flatMap(({ steps, state }) => [...steps.map((step) => step.state.value), state.value]),
    );
    const taken = new Set<string>();
    for (const { steps } of paths) {
      steps.slice(1).forEach(({ event }, k) => {
        const before = steps[k]?.state as Snapshot;
        for (const choice of machine.getTransitionData(before, event as SittingEvent) ?? []) {
          taken.add(drawn.get(choice) ?? "undrawn");
        }
      });
    }
    for (const arrow of taken) takenArrows.add(arrow);
    process.stdout.write(
      `sitting chart: ${reached.size} states, ${taken.size} of ${drawn.size} arrows, ${paths.length} paths\n`,
    );
    expect([...reached].sort()).toEqual(states);
    expect(taken.size).toBe(transitions);
  });

  test("saved and revived at every step, it does what the rules of a sitting say", async () => {
    for (const path of paths) {
      const sitting = new SavedSitting(plan);
      await path.test({
        // The step's event carries its payload, but is typed by its name alone.
        events: Object.fromEntries(
          EVENTS.map(({ type }) => [type, (step: { event: object }) => sitting.take(step.event as SittingEvent)]),
        ),
        states: {
          "*": ({ value, context }) => {
            const { snapshot, plain } = sitting;
            expect(snapshot).toMatchObject({ value, context });
            expect(plain.state).toBe(value);
            expect(context.begunAgain).toBe(plain.again);
            expect([context.triesDone, context.triesLost, context.answersGiven, context.isTryBegun]).toEqual([
              plain.done,
              plain.lost,
              plain.answers,
              plain.isTrying,
            ]);
            expect(workedTime(context, 20 * MINUTE)).toBe(plain.worked(20 * MINUTE));
          },
        },
      });
    }
  }, 120_000);
});

test("between them, these sittings take every arrow that is drawn", () => {
  const all = [...drawnArrows(sittingMachine(PLAN)).values()];
  expect(all.filter((arrow) => !takenArrows.has(arrow))).toEqual([]);
});

describe("the clock", () => {
  const running = (plan: SittingPlan, events: readonly SittingEvent[]): SittingContext => {
    const actor = createActor(sittingMachine(plan)).start();
    for (const event of events) actor.send(event);
    return actor.getSnapshot().context;
  };
  const begun: SittingEvent[] = [{ type: "instructions.read" }, { type: "sitting.started", now_ms: 1000 }];

  test("stands while paused", () => {
    const context = running(PLAN, [
      ...begun,
      { type: "sitting.paused", now_ms: 4000 },
      { type: "sitting.resumed", now_ms: 50_000 },
    ]);
    expect(workedTime(context, 51_000)).toBe(4000);
  });

  const STRICT: SittingPlan = { ...PLAN, pauseAllowed: false };
  const reloaded: SittingEvent[] = [...begun, { type: "page.reloaded", now_ms: 4000 }];

  test("runs on over a reload where there is no pause, and its time can run out there", () => {
    const back = running(STRICT, [...reloaded, { type: "sitting.resumed", now_ms: 50_000 }]);
    expect(workedTime(back, 51_000)).toBe(50_000);
    const late = running(STRICT, [...reloaded, { type: "time.checked", now_ms: 6 * MINUTE }]);
    expect(late.ended).toBe("time");
  });

  test("every pause and every reload is counted with when it began and how long it was", () => {
    const context = running(PLAN, [
      ...begun,
      { type: "sitting.paused", now_ms: 4000 },
      { type: "sitting.resumed", now_ms: 10_000 },
      { type: "page.reloaded", now_ms: 12_000 },
      { type: "page.reloaded", now_ms: 20_000 },
      { type: "sitting.abandoned", now_ms: 21_500 },
    ]);
    expect(context.breaks).toEqual([
      { kind: "pause", at_ms: 3000, length_ms: 6000 },
      { kind: "reload", at_ms: 5000, length_ms: 8000 },
      { kind: "reload", at_ms: 5000, length_ms: 1500 },
    ]);
    expect(context.openBreak).toBeNull();
  });

  test("a break is never negative", () => {
    const context = running(PLAN, [...reloaded, { type: "sitting.resumed", now_ms: 10 }]);
    expect(context.breaks).toEqual([{ kind: "reload", at_ms: 3000, length_ms: 0 }]);
  });

  test("a clock set back is no time, not negative time", () => {
    expect(workedTime(running(PLAN, begun), 0)).toBe(0);
  });

  test("a try that ends after the time is up is not made", () => {
    const context = running(PLAN, [
      ...begun,
      { type: "try.begun", now_ms: 2000 },
      { type: "try.finished", now_ms: 6 * MINUTE },
    ]);
    expect([context.triesDone, context.ended]).toEqual([0, "time"]);
  });
});
