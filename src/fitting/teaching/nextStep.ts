import type { Graduations } from "../../lock/dial";
import type { Assembly } from "../assembly";
import { type FitCheck, hindranceTo } from "../fitCheck";
import { checksOf } from "../fitChecks";
import { isBent, isHeavy, isOffCenter } from "../fitFault";
import { stageOf } from "../fitStage";
import { goodPlaces, type LockToFit, standsOutAt } from "../fittedLock";
import { spindleEnd, spindleLength } from "../geometry/spindleLength";
import { bindsBy } from "../geometry/strikeFit";
import { stackFit } from "../washerStack";

/** What is wise to do next with a lock as it is put together. */
export type NextStep =
  | { readonly step: "start-again" | "replace-spindle" | "dress-spindle" | "take-cover" | "take-key" | "take-dial" }
  | { readonly step: "put-washers" | "take-body" | "hang-body" | "tighten-body" }
  | { readonly step: "put-ring" | "loosen-ring" | "take-ring" | "tighten-ring" }
  | { readonly step: "cut-spindle"; readonly to_mm: number }
  /** Graduations toward the door; negative back out. */
  | { readonly step: "screw-dial"; readonly by: Graduations }
  | { readonly step: "put-key" | "drive-key" | "screw-key" | "secure-key" }
  | { readonly step: "hang-strike" | "raise-strike" | "lower-strike" | "loosen-strike" | "tighten-strike" }
  | { readonly step: "put-strap" | "plug-cable" | "pull-cable" | "connect-battery" | "disconnect-battery" }
  | { readonly step: "replace-fuse" | "replace-board" | "put-cover" | "declare" }
  | { readonly step: "check"; readonly check: FitCheck };

/** What is to be done about one part; null where it is as it should be. */
type Step = NextStep | null;

const rightLength = ({ sizes }: LockToFit) => spindleLength(sizes, (sizes.gapLeast_mm + sizes.gapMost_mm) / 2);

/** Where the dial belongs on this spindle: keyway and gap right, and its end where it should be. */
const placeFor = (lock: LockToFit, length_mm: number) =>
  goodPlaces(lock, length_mm).find(({ gap_mm }) => {
    const { outLeast_mm, outMost_mm } = lock.sizes;
    return spindleEnd(standsOutAt(lock, length_mm, gap_mm), [outLeast_mm, outMost_mm]) === "holds";
  });

function aboutWashers({ washers, body }: Assembly, { sizes }: LockToFit): Step {
  const { endPlay_mm, friction_N } = stackFit(washers, sizes);
  if (endPlay_mm <= sizes.endPlayMost_mm && !isHeavy(friction_N / sizes.gripGive_N)) return null;
  return body === null ? { step: "put-washers" } : { step: "take-body" };
}

function aboutSpindle({ spindle, locker }: Assembly, lock: LockToFit): Step {
  const { length_mm, end, isStripped } = spindle;
  const to_mm = rightLength(lock);
  const isTooShort = placeFor(lock, length_mm) === undefined && length_mm <= to_mm;
  if (isStripped || isTooShort || isBent(spindle) || locker.includes("spindle-thread")) {
    return { step: "replace-spindle" };
  }
  if (placeFor(lock, length_mm) === undefined) return { step: "cut-spindle", to_mm };
  return end === "sawn" ? { step: "dress-spindle" } : null;
}

function aboutRing({ ring }: Assembly): Step {
  if (ring === null) return { step: "put-ring" };
  if (isOffCenter(ring)) return ring.isTight ? { step: "loosen-ring" } : { step: "take-ring" };
  return ring.isTight ? null : { step: "tighten-ring" };
}

function aboutBody({ body }: Assembly): Step {
  if (body === null) return { step: "hang-body" };
  return body === "by-one" ? { step: "tighten-body" } : null;
}

/** A key pulls the last graduation into line, so a dial that it holds may stand that far off. */
function aboutDial({ spindle, dialIn, key }: Assembly, lock: LockToFit): Step {
  const by = (placeFor(lock, spindle.length_mm)?.turnedIn ?? 0) - (dialIn ?? 0);
  const reach = (lock.sizes.keyReach * lock.perTurn) / 100;
  if (dialIn !== null && Math.abs(by) <= (key === null ? reach / 2 : reach)) return null;
  return key === null ? { step: "screw-dial", by } : { step: "take-key" };
}

function aboutKey({ key, locker }: Assembly): Step {
  if (key === null) return { step: "put-key" };
  if (!key.isSeated) return { step: "drive-key" };
  if (!locker.includes("key-screw")) return { step: "secure-key" };
  return key.screw === "firm" ? null : { step: "screw-key" };
}

function aboutStrike({ strike }: Assembly, { sizes }: LockToFit): Step {
  if (strike === null) return { step: "hang-strike" };
  const { above_mm, screws } = strike;
  if (bindsBy({ ...sizes, above_mm }) === 0) return screws === "by-all" ? null : { step: "tighten-strike" };
  if (screws === "by-all") return { step: "loosen-strike" };
  return { step: above_mm > 0 ? "lower-strike" : "raise-strike" };
}

/** The battery comes last: the board looks for its encoder only when power comes. */
function aboutBoard({ board }: Assembly): Step {
  if (board === null) return null;
  const { harm, hasCable, leads, isFuseBlown, foundEncoder } = board;
  const isHarmed = harm !== "none";
  const wrong: readonly (readonly [NextStep, boolean])[] = [
    [{ step: "disconnect-battery" }, leads !== null && (isHarmed || leads === "reversed" || !hasCable)],
    [{ step: "pull-cable" }, isHarmed && hasCable],
    [{ step: "replace-board" }, isHarmed],
    [{ step: "replace-fuse" }, isFuseBlown],
    [{ step: "plug-cable" }, !hasCable],
    [{ step: "connect-battery" }, leads === null],
    [{ step: "disconnect-battery" }, !foundEncoder],
  ];
  const step = wrong.find(([, isSo]) => isSo)?.[0] ?? null;
  return step === null || board.isStrapOn ? step : { step: "put-strap" };
}

/** Steps under the dial: it comes out for them, and its key before it. */
function underDial(now: Assembly, lock: LockToFit): Step {
  const step = aboutWashers(now, lock) ?? aboutSpindle(now, lock) ?? (now.body === null ? aboutBody(now) : null);
  const wanted = step ?? aboutBody(now) ?? aboutRing(now);
  if (wanted === null || wanted.step === "tighten-body") return wanted;
  if (now.key !== null) return { step: "take-key" };
  return now.dialIn === null ? wanted : { step: "take-dial" };
}

const NEEDS_NO_COVER: readonly NextStep["step"][] = [
  ...([
    "take-key",
    "put-key",
    "drive-key",
    "screw-key",
    "secure-key",
    "tighten-body",
    "take-body",
    "plug-cable",
    "pull-cable",
    "connect-battery",
    "disconnect-battery",
    "replace-fuse",
    "replace-board",
  ] as const),
];

/** The checks that are still to be made; those under the cover while it is off, the cover's own once it is on. */
function aboutChecks(now: Assembly, made: readonly FitCheck[]): NextStep {
  const open = checksOf(now).filter((check) => !made.includes(check) && (check === "cover") === now.hasCover);
  const check = open.find((one) => hindranceTo(one, now) === null);
  if (check !== undefined) return { step: "check", check };
  return now.hasCover ? { step: "declare" } : { step: "put-cover" };
}

/**
 * The next wise step, for full help: parts that are spoiled or in the wrong place first, then what is still to be put on, then
 * the checks, then the cover. It knows the lock as a teacher does who has fitted it; whoever follows it ends with a lock that
 * has nothing wrong.
 *
 * @param made - checks made since a part was last moved
 */
export function nextStep(now: Assembly, lock: LockToFit, made: readonly FitCheck[]): NextStep {
  if (stageOf(now, lock) === "spent") return { step: "start-again" };
  const step =
    underDial(now, lock) ?? aboutDial(now, lock) ?? aboutKey(now) ?? aboutBoard(now) ?? aboutStrike(now, lock);
  if (step === null) return aboutChecks(now, made);
  return now.hasCover && NEEDS_NO_COVER.includes(step.step) ? { step: "take-cover" } : step;
}
