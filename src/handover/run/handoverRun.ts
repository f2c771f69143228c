import { createActor, initialTransition, type SnapshotFrom } from "xstate";
import type { DoorToFit } from "../../fitting/doorToFit";
import type { Profile } from "../../lock/profile";
import type { Problem } from "../../wording/problem";
import { WORKING } from "./chart/chartGuards";
import { handoverMachine } from "./chart/handoverMachine";
import type { TimedEvent } from "./recordedRun";
import type { HandoverFault } from "./rules/faultTriggers";
import type { HandoverEvent } from "./rules/handoverEvent";
import { hindranceOf } from "./rules/hindrances";
import { missingProofs, type ProofCode } from "./rules/proofs";
import { RunError } from "./rules/runError";
import { runProblem } from "./rules/runWords";
import type { Situation } from "./rules/situation";
import { begunFitting, fittingAfter, hinderedByFit, type RunFitting } from "./runFitting";

type Chart = ReturnType<typeof handoverMachine>;
type Snapshot = SnapshotFrom<Chart>;
type Scope = Parameters<Chart["transition"]>[2];

/** Making a chart costs more than running it; it holds nothing of a run. */
const charts = new Map<string, Chart>();

function chartOf(kind: Profile["kind"], isToFit: boolean): Chart {
  const name = `${kind} ${isToFit}`;
  const chart = charts.get(name) ?? handoverMachine(kind, isToFit);
  charts.set(name, chart);
  return chart;
}

const nothing = () => undefined;

/** A place for a chart's transitions in which nothing acts. `transition` of xstate makes one for each event, for 5 ms. */
function placeOf(chart: Chart): Scope {
  const self = createActor(chart);
  const { id, sessionId, system } = self;
  const heard = { logger: nothing, defer: nothing, emit: nothing, stopChild: nothing, actionExecutor: nothing };
  return { self, id, sessionId, system, ...heard };
}

const places = new WeakMap<Chart, Scope>();

/** Where a chart stands after an event. */
function afterEvent(chart: Chart, before: Snapshot, event: TimedEvent): Snapshot {
  const place = places.get(chart) ?? placeOf(chart);
  places.set(chart, place);
  return chart.transition(before, event, place);
}

/** One step of a run, and what it did. */
export interface RunStep {
  readonly event: TimedEvent;
  /** Where everything stood after it. */
  readonly situation: Situation;
  readonly faults: readonly HandoverFault[];
  /** What was still missing, where the step was to sign. */
  readonly missing: readonly ProofCode[];
  /** Whether the debrief went back to before it. It stays on record. */
  readonly isUndone: boolean;
}

/** A step that may still be undone, and chart and lock after it. */
interface LiveStep {
  readonly index: number;
  readonly after: Snapshot;
  readonly fitting: RunFitting | null;
}

/**
 * One handover run: the chart, and its history. Mutable.
 *
 * The debrief may take it back to any step; the steps after it are then undone, and stay on record with their faults.
 */
export class HandoverRun {
  readonly profile: Profile;
  private readonly machine: Chart;
  private readonly begun: Snapshot;
  private readonly begunWith: RunFitting | null;
  private readonly all: RunStep[] = [];
  private live: LiveStep[] = [];

  /** @param door - whose lock is to be fitted first; null where the lock is on the door */
  constructor(profile: Profile, door: DoorToFit | null = null) {
    this.profile = profile;
    this.machine = chartOf(profile.kind, door !== null);
    [this.begun] = initialTransition(this.machine);
    this.begunWith = door && begunFitting(profile, door);
  }

  /** Where everything stands. After the signature: where it stood then. */
  get situation(): Situation {
    const last = this.live.at(-1);
    return last === undefined ? situationOf(this.begun) : (this.all[last.index]?.situation ?? situationOf(this.begun));
  }

  /** The lock as far as it is put together; null where it came on its door. */
  get fitting(): RunFitting | null {
    const last = this.live.at(-1);
    return last === undefined ? this.begunWith : last.fitting;
  }

  get isHandedOver(): boolean {
    return this.snapshot.status === "done";
  }

  /** Every step ever made, in order, those undone too. */
  get steps(): readonly RunStep[] {
    return this.all;
  }

  /** How many steps count, those undone not among them. */
  get length(): number {
    return this.live.length;
  }

  /** Why something cannot be done as things stand, or undefined where it can. */
  hindrance(event: HandoverEvent): Problem | undefined {
    if (this.isHandedOver) return runProblem("handed-over", []);
    return hindranceOf(event, this.situation) ?? hinderedByFit(event, this.fitting);
  }

  /**
   * Takes what happened.
   *
   * @returns the step it made
   * @throws {RunError} where it cannot have happened
   */
  take(event: TimedEvent): RunStep {
    const hindrance = this.hindrance(event);
    if (hindrance !== undefined) throw new RunError(runProblem("cannot-happen", [], { type: event.type, hindrance }));
    const before = this.snapshot;
    const after = afterEvent(this.machine, before, event);
    const step: RunStep = {
      event,
      situation: after.status === "done" ? this.situation : situationOf(after),
      faults: after.context.faults.slice(before.context.faults.length),
      missing: event.type === "duty.signed" ? missingProofs(this.situation).map(({ code }) => code) : [],
      isUndone: false,
    };
    this.all.push(step);
    const fitting = this.fitting && fittingAfter(this.fitting, event, this.profile);
    this.live.push({ index: this.all.length - 1, after, fitting });
    return step;
  }

  /**
   * Takes the run back to where it stood after some of the steps that count.
   *
   * @param steps - how many still count then, from 0 to `length`
   * @throws {RunError} where there are not so many
   */
  goBackTo(steps: number): void {
    if (steps > this.live.length) {
      throw new RunError(runProblem("no-such-step", [], { steps, count: this.live.length }));
    }
    for (const { index } of this.live.slice(steps)) {
      const step = this.all[index];
      if (step !== undefined) this.all[index] = { ...step, isUndone: true };
    }
    this.live = this.live.slice(0, steps);
  }

  private get snapshot(): Snapshot {
    return this.live.at(-1)?.after ?? this.begun;
  }
}

/** Where the chart's regions stand; there are none once the door is handed over. */
function situationOf(snapshot: Snapshot): Situation {
  const value = snapshot.value as { readonly [WORKING]: Situation & { readonly watch: unknown } };
  const { watch: _, ...situation } = value[WORKING];
  return situation;
}
