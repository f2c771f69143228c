import type { Assembly } from "../../src/fitting/assembly";
import type { FitCheck } from "../../src/fitting/fitCheck";
import { voidedBy } from "../../src/fitting/fitChecks";
import type { LockToFit } from "../../src/fitting/fittedLock";
import type { FittingAct } from "../../src/fitting/fittingAct";
import { putTogether } from "../../src/fitting/putTogether";
import { type NextStep, nextStep } from "../../src/fitting/teaching/nextStep";

/** What an apprentice does who is told a step; null where it is no act with a part. */
function actFor(told: NextStep): FittingAct | null {
  switch (told.step) {
    case "put-washers":
      return { type: "washers.put", washers: ["flat", "flat", "spring"] };
    case "cut-spindle":
      return { type: "spindle.cut", length_mm: told.to_mm };
    case "screw-dial":
      return { type: "dial.screwed", by: told.by };
    case "put-ring":
      return { type: "ring.put", offset: { x_mm: 0.02, y_mm: 0.02 }, turned: 1 };
    case "screw-key":
      return { type: "key.screwed", torque_Nm: 0.6 };
    case "secure-key":
      return { type: "locker.dropped", at: "key-screw" };
    case "hang-strike":
      return { type: "strike.hung", above_mm: -3.2 };
    case "raise-strike":
      return { type: "strike.moved", by_mm: 0.5 };
    case "lower-strike":
      return { type: "strike.moved", by_mm: -0.5 };
    case "plug-cable":
      return { type: "cable.plugged", luck: 0.9 };
    case "pull-cable":
      return { type: "cable.pulled", luck: 0.9 };
    case "connect-battery":
      return { type: "battery.connected", leads: "right", luck: 0.9 };
    case "disconnect-battery":
      return { type: "battery.disconnected", luck: 0.9 };
    case "replace-fuse":
      return { type: "fuse.replaced", luck: 0.9 };
    case "replace-board":
      return { type: "board.replaced", luck: 0.9 };
    case "check":
    case "declare":
    case "start-again":
      return null;
    default:
      return { type: PLAIN[told.step] };
  }
}

/** Acts that a step names without more. */
export const PLAIN = {
  "replace-spindle": "spindle.replaced",
  "dress-spindle": "spindle.dressed",
  "take-cover": "cover.taken",
  "take-key": "key.taken",
  "take-dial": "dial.taken",
  "take-body": "body.taken",
  "hang-body": "body.hung",
  "tighten-body": "body.tightened",
  "loosen-ring": "ring.loosened",
  "take-ring": "ring.taken",
  "tighten-ring": "ring.tightened",
  "put-key": "key.put",
  "drive-key": "key.driven",
  "loosen-strike": "strike.loosened",
  "tighten-strike": "strike.tightened",
  "put-cover": "cover.put",
  "put-strap": "strap.put",
} as const;

const MOST_STEPS = 80;

interface Followed {
  readonly now: Assembly;
  readonly checks: readonly FitCheck[];
}

/** Does what is told. @throws where that could not be done */
function doing(told: NextStep, { now, checks }: Followed, lock: LockToFit): Followed {
  if (told.step === "check") return { now, checks: [...checks, told.check] };
  const act = actFor(told);
  if (act === null) return { now, checks };
  const { assembly, hindrance } = putTogether(now, act, lock);
  if (hindrance !== null) throw new Error(`${told.step}: ${hindrance}`);
  const voided = voidedBy(act);
  return { now: assembly, checks: checks.filter((check) => !voided.includes(check)) };
}

/** Follows the help from a lock as it is to its end. @throws {Error} where that cannot be done, or goes on and on */
export function followed(start: Assembly, lock: LockToFit): Followed & { readonly end: string } {
  let here: Followed = { now: start, checks: [] };
  for (let k = 0; k < MOST_STEPS; k++) {
    const told = nextStep(here.now, lock, here.checks);
    if (told.step === "declare" || told.step === "start-again") return { ...here, end: told.step };
    here = doing(told, here, lock);
  }
  throw new Error("the help goes on and on");
}
