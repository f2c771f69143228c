import type { FitCheck } from "../../fitting/fitCheck";
import type { FitFault } from "../../fitting/fitFaultCode";
import { FAULT_WORDS as FIT_WORDS } from "../../fitting/fitWords";
import type { Milliseconds } from "../../lock/dial";
import { countText } from "../../wording/amountWords";
import type { Problem } from "../../wording/problem";
import { seedMisfit } from "./drawnBySeed";
import { HandoverRun, type RunStep } from "./handoverRun";
import { type RecordedRun, type WentBack, wrongAt } from "./recordedRun";
import type { HandoverFault } from "./rules/faultTriggers";
import { FAULT_WORDS } from "./rules/faultWords";
import { missingProofs, type ProofCode, REQUIRED_PROOFS } from "./rules/proofs";
import { RunError } from "./rules/runError";
import { runProblem } from "./rules/runWords";
import { faultsOfRun, fitMisfit, type RunFitting, skippedChecks } from "./runFitting";
import { sceneMisfit } from "./sceneFit";

/** A fault of a run, where it was made. */
export interface MadeFault {
  readonly code: HandoverFault;
  /** Which step made it, counted from 1 over all steps, those undone too. */
  readonly step: number;
  readonly at_ms: Milliseconds;
  /** Whether the debrief went back to before it. */
  readonly isUndone: boolean;
}

/** What a fit came to that was made in a run. */
export interface FitResult {
  /** Whether the lock is together. */
  readonly isTogether: boolean;
  /** What is wrong with it. */
  readonly faults: readonly FitFault[];
  /** Checks that were not made since a part was last moved. */
  readonly skipped: readonly FitCheck[];
}

/** What a run came to, as plain data. */
export interface HandoverResult {
  readonly isHandedOver: boolean;
  /** Handed over, and without a fault, undone ones counted. */
  readonly isClean: boolean;
  /** Required proofs that are missing at the end; none once handed over. */
  readonly missing: readonly ProofCode[];
  /** Every fault in order, those undone in the debrief too. */
  readonly faults: readonly MadeFault[];
  readonly steps: number;
  readonly undoneSteps: number;
  /** From the beginning to the last step, milliseconds. */
  readonly duration_ms: Milliseconds;
  /** Whether a simulated hand did the dialing. */
  readonly isHandsOff: boolean;
  /** How its lock is fitted; left out where the lock came on its door. */
  readonly fit?: FitResult;
}

const faultsOf = ({ faults, event, isUndone }: RunStep, index: number): MadeFault[] =>
  faults.map((code) => ({ code, step: index + 1, at_ms: event.at_ms, isUndone }));

const fitResult = ({ situation }: HandoverRun, fitting: RunFitting): FitResult => ({
  isTogether: situation.fit !== "apart",
  faults: situation.fit === "apart" ? [] : faultsOfRun(fitting),
  skipped: skippedChecks(fitting),
});

/** What a run came to. */
export function resultOf(run: HandoverRun, isHandsOff: boolean): HandoverResult {
  const { steps, isHandedOver, fitting } = run;
  const faults = steps.flatMap(faultsOf);
  return {
    isHandedOver,
    isClean: isHandedOver && faults.length === 0,
    missing: isHandedOver ? [] : missingProofs(run.situation).map(({ code }) => code),
    faults,
    steps: steps.length,
    undoneSteps: steps.filter(({ isUndone }) => isUndone).length,
    duration_ms: steps.at(-1)?.event.at_ms ?? 0,
    isHandsOff,
    ...(fitting && { fit: fitResult(run, fitting) }),
  };
}

type RecordedEvent = RecordedRun["events"][number];

const isBack = (event: RecordedEvent): event is WentBack => event.type === "run.wentBack";

/** What keeps an event from following what went before, or undefined where it can. */
function misfitOf(run: HandoverRun, event: RecordedEvent, scene: RecordedRun["scene"]): Problem | undefined {
  if (isBack(event)) {
    const { length } = run;
    return event.steps > length ? runProblem("back-too-far", [], { step: event.steps, length }) : undefined;
  }
  const misfit = sceneMisfit(event, scene, run);
  if (misfit !== undefined) return misfit;
  const hindrance = run.hindrance(event);
  if (hindrance !== undefined) return runProblem("hindered", [], { hindrance });
  const { fitting, profile } = run;
  return fitting === null ? undefined : fitMisfit(event, fitting, profile);
}

/**
 * Replays a recorded run, and holds every event against what went before it, against the scene and against the lock.
 *
 * @throws {RunError} naming the event that cannot have happened, why, and how to fix it
 */
export function replayRun({ profile, scene, fitting, events }: RecordedRun): HandoverRun {
  const run = new HandoverRun(profile, fitting ?? null);
  events.forEach((event, index) => {
    const misfit = misfitOf(run, event, scene);
    if (misfit !== undefined) throw new RunError(wrongAt(events, index, misfit));
    if (isBack(event)) run.goBackTo(event.steps);
    else run.take(event);
  });
  return run;
}

/**
 * Replays a recorded run, and tells what it came to. Where it promises that its seed drew its door, it is held to that.
 *
 * @throws {RunError} naming the event that cannot have happened, or what its seed does not draw
 */
export function checkRun(recorded: RecordedRun): HandoverResult {
  const misfit = recorded.drawnBy === undefined ? undefined : seedMisfit(recorded);
  if (misfit !== undefined) throw new RunError(misfit, "handover");
  return resultOf(replayRun(recorded), recorded.isHandsOff);
}

/**
 * What is to be said of a run that makes no promise of its seed: that its door is another one than the seed's. Undefined
 * where it is the seed's.
 */
export function ownDoor(recorded: RecordedRun): Problem | undefined {
  const { drawnBy, seed } = recorded;
  const isDrawn = drawnBy !== undefined || seedMisfit(recorded) === undefined;
  return isDrawn ? undefined : runProblem("own-door", [], { seed });
}

/** What is missing for each required proof, in sentences, in the order of the job. */
export function missingWords(missing: readonly ProofCode[]): string[] {
  return REQUIRED_PROOFS.filter(({ code }) => missing.includes(code)).map((proof) => proof.missing);
}

/** A fault in lines: where and what, who is harmed, what should have been done, and the source of that demand. */
export function faultLines({ code, step, isUndone }: MadeFault): readonly [string, ...string[]] {
  const { happened, harmed, instead, source } = FAULT_WORDS[code];
  return [
    `Step ${step}${isUndone ? ", undone in the debrief" : ""}: ${happened}`,
    `Harmed: ${harmed}`,
    `Instead: ${instead}`,
    `Source: ${source}.`,
  ];
}

/** What is wrong with the fit that was made in a run, in sentences. */
export const fitLines = ({ fit }: HandoverResult): string[] =>
  (fit?.faults ?? []).map((fault) => `${FIT_WORDS[fault].what} ${FIT_WORDS[fault].does}`);

/** What a run came to, in one sentence. */
export function verdictWords({ isHandedOver, isClean, faults }: HandoverResult): string {
  if (isClean) return "Handed over with every proof and without a fault.";
  if (!isHandedOver) return "Not handed over.";
  const open = faults.filter(({ isUndone }) => !isUndone).length;
  return open === 0
    ? "Handed over with every proof. Every fault was undone in the debrief."
    : `Handed over with every proof, but with ${countText(open, "fault")}.`;
}
