import type { Assembly } from "../../fitting/assembly";
import type { SelfCheck } from "../../fitting/board";
import { type DoorToFit, trayAt } from "../../fitting/doorToFit";
import { type Fit, fitOf } from "../../fitting/fit";
import type { FitCheck } from "../../fitting/fitCheck";
import { CHECK_SET, type CheckSet, checksOf, isInSet } from "../../fitting/fitChecks";
import { type FitFault, fitFaults } from "../../fitting/fitFault";
import { stageOf } from "../../fitting/fitStage";
import { type LockToFit, lockWith } from "../../fitting/fittedLock";
import { CENTERED } from "../../fitting/offCenter";
import { putTogether } from "../../fitting/putTogether";
import type { Profile } from "../../lock/profile";
import type { Problem } from "../../wording/problem";
import type { HandoverEvent } from "./rules/handoverEvent";
import { type HindranceCode, runProblem } from "./rules/runWords";

/** The lock on a door as far as a run has it put together. */
export interface RunFitting {
  readonly lock: LockToFit;
  readonly assembly: Assembly;
  /** Made since a part was last moved. */
  readonly checks: readonly FitCheck[];
  /** Which checks there were to make. */
  readonly checkSet: CheckSet;
}

type FittedEvent = Extract<HandoverEvent, { readonly type: "lock.fitted" }>;

/** How the lock lies at its door as a run begins. */
export function begunFitting(profile: Profile, door: DoorToFit): RunFitting {
  const lock = lockWith(profile, door.slotAt);
  return { lock, assembly: trayAt(door, lock), checks: [], checkSet: CHECK_SET };
}

/** The lock after an event; what cannot be done to it is left out. */
export function fittingAfter(fitting: RunFitting, event: HandoverEvent, profile: Profile): RunFitting {
  if (event.type === "parts.replaced") return begunFitting(profile, { slotAt: event.slotAt, bend: CENTERED });
  if (event.type !== "lock.fitted") return fitting;
  const assembly = event.acts.reduce((now, act) => putTogether(now, act, fitting.lock).assembly, fitting.assembly);
  return { ...fitting, assembly, checks: event.checks, checkSet: event.checkSet };
}

/** What a run's lock comes to; null while it is not together. */
export const fitOfRun = ({ assembly, lock }: RunFitting): Fit | null => fitOf(assembly, lock);

/** What is wrong with its fit; none while it is not together. */
export function faultsOfRun({ assembly, lock }: RunFitting): readonly FitFault[] {
  const fit = fitOf(assembly, lock);
  return fit === null ? [] : fitFaults(fit, assembly, lock.sizes);
}

/** Checks that were not made since a part was last moved. */
export const skippedChecks = ({ assembly, checks, checkSet }: RunFitting): readonly FitCheck[] =>
  checksOf(assembly).filter((check) => isInSet(check, checkSet) && !checks.includes(check));

/** What the word that it is fitted tells of a lock: whether it is right, and whether every check was made. */
export const wordOf = (fitting: RunFitting) => ({
  isFaultless: faultsOfRun(fitting).length === 0,
  isChecked: skippedChecks(fitting).length === 0,
});

/** What keeps the word that a lock is fitted from being true of its acts, or undefined where nothing does. */
export function fitMisfit(event: FittedEvent, fitting: RunFitting, profile: Profile): Problem | undefined {
  const { acts, isFaultless, isChecked } = event;
  let { assembly } = fitting;
  for (const [index, act] of acts.entries()) {
    const done = putTogether(assembly, act, fitting.lock);
    if (done.hindrance !== null) {
      return runProblem("fit-act-hindered", [], { index, type: act.type, hindrance: done.hindrance });
    }
    assembly = done.assembly;
  }
  const stage = stageOf(assembly, fitting.lock);
  if (stage === "apart" || stage === "spent") return runProblem("fit-not-together", [], { stage });
  const word = wordOf(fittingAfter(fitting, event, profile));
  if (word.isFaultless === isFaultless && word.isChecked === isChecked) return undefined;
  return runProblem("fit-differs", [], { isFaultless, isChecked, isGood: word.isFaultless, isWhole: word.isChecked });
}

const BOARD_CODES: Readonly<Record<Exclude<SelfCheck, "passes">, HindranceCode>> = {
  silent: "board-silent",
  "no-encoder": "board-finds-no-encoder",
  unsteady: "board-unsteady",
};

/** Why an electronic lock takes neither zero nor number as it is fitted, or undefined where it does. */
export function boardProblem(fitting: RunFitting | null): Problem | undefined {
  const shows = fitting === null ? undefined : fitOfRun(fitting)?.selfCheck;
  return shows === undefined || shows === "passes" ? undefined : runProblem(BOARD_CODES[shows], []);
}

/** Whether an event is the work of a lock that reads its dial. */
const isReadByLock = (event: HandoverEvent): boolean =>
  event.type === "zero.set" ||
  event.type === "combination.changed" ||
  (event.type === "combination.dialed" && event.opened);

/** What a fit does not let happen at the door, or undefined: no strike holds no bolt, a board that fails reads no dial. */
export function hinderedByFit(event: HandoverEvent, fitting: RunFitting | null): Problem | undefined {
  if (isReadByLock(event)) return boardProblem(fitting);
  const hasNoStrike = fitting !== null && fitting.assembly.strike === null;
  return event.type === "door.shut" && hasNoStrike ? runProblem("no-strike", []) : undefined;
}
