import type { Assembly } from "../../fitting/assembly";
import type { SelfCheck } from "../../fitting/board";
import { type DoorToFit, trayAt } from "../../fitting/doorToFit";
import { type Fit, fitOf } from "../../fitting/fit";
import type { FitCheck } from "../../fitting/fitCheck";
import { CHECK_SET, type CheckSet, checksOf, isInSet } from "../../fitting/fitChecks";
import { fitFaults } from "../../fitting/fitFault";
import type { FitFault } from "../../fitting/fitFaultCode";
import { type FitStage, stageOf } from "../../fitting/fitStage";
import { type LockToFit, lockWith } from "../../fitting/fittedLock";
import type { FittingAct } from "../../fitting/fittingAct";
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
type ReplacedEvent = Extract<HandoverEvent, { readonly type: "parts.replaced" }>;

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

/** Parts after acts, or what keeps one of the acts from being done. */
function partsAfter({ assembly, lock }: RunFitting, acts: readonly FittingAct[]): Assembly | Problem {
  let now = assembly;
  for (const [index, act] of acts.entries()) {
    const done = putTogether(now, act, lock);
    if (done.hindrance !== null) {
      const hindrance = runProblem(`fit/${done.hindrance}`, []);
      return runProblem("fit-act-hindered", [], { index, type: act.type, hindrance });
    }
    now = done.assembly;
  }
  return now;
}

const NOT_TOGETHER: { readonly [Stage in FitStage]?: "fit-in-parts" | "fit-of-spoiled-parts" } = {
  apart: "fit-in-parts",
  spent: "fit-of-spoiled-parts",
};

/** What keeps the word that a lock is fitted from being true of its acts, or undefined where nothing does. */
function fittedMisfit(event: FittedEvent, fitting: RunFitting, profile: Profile): Problem | undefined {
  const parts = partsAfter(fitting, event.acts);
  if ("code" in parts) return parts;
  const isNone = NOT_TOGETHER[stageOf(parts, fitting.lock)];
  if (isNone !== undefined) return runProblem(isNone, []);
  const { isFaultless, isChecked } = event;
  const word = wordOf(fittingAfter(fitting, event, profile));
  if (word.isFaultless === isFaultless && word.isChecked === isChecked) return undefined;
  return runProblem("fit-differs", [], { isFaultless, isChecked, isGood: word.isFaultless, isWhole: word.isChecked });
}

/** What keeps parts from having been spoiled by the acts that new ones came after, or undefined where nothing does. */
function replacedMisfit({ acts }: ReplacedEvent, fitting: RunFitting): Problem | undefined {
  // An earlier version left them out.
  if (acts === undefined) return undefined;
  const parts = partsAfter(fitting, acts);
  if ("code" in parts) return parts;
  return stageOf(parts, fitting.lock) === "spent" ? undefined : runProblem("parts-not-spoiled", []);
}

/** What keeps an event from having come of its acts on the parts, or undefined where nothing does. */
export function fitMisfit(event: HandoverEvent, fitting: RunFitting, profile: Profile): Problem | undefined {
  if (event.type === "lock.fitted") return fittedMisfit(event, fitting, profile);
  return event.type === "parts.replaced" ? replacedMisfit(event, fitting) : undefined;
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
