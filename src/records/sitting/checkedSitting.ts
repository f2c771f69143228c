import { DrillError } from "../../drill/drillError";
import { sha256Hex } from "../../drill/sha256";
import { decodeTrace } from "../motion/traceCodec";
import type { SittingRecord } from "../records";
import { type SittingStanding, standingOf } from "../sittingStanding";
import { tryId } from "../tryOfSitting";
import type { MotionsBeside } from "./replayedTries";
import { type SittingShown, sittingShown } from "./sittingShown";

/** Motions of attempts by their ids, packed as the logbook packs them. */
export type PackedMotions = ReadonlyMap<string, Uint8Array>;

/** A sitting of a logbook, as its own record tells it. */
export type CheckedSitting =
  | { readonly kind: "running" }
  | { readonly kind: "ended"; readonly shown: SittingShown }
  /** There is no record in it that can be read: why, a sentence without its period. */
  | { readonly kind: "unreadable"; readonly problem: string };

/** The motions of the tries that a logbook holds beside the record: records before 0.3.0 bring none. */
const motionsBeside =
  (sittingId: string, traces: PackedMotions): MotionsBeside =>
  (index) => {
    const bytes = traces.get(tryId(sittingId, index));
    return bytes && decodeTrace(bytes);
  };

const NO_MOTIONS: PackedMotions = new Map();

interface Asked {
  /** The version that checks. */
  readonly appVersion: string;
  /** Name that the logbook has for the person of the sitting; not compared where left out. */
  readonly person?: string | undefined;
  readonly traces?: PackedMotions | undefined;
}

function checked(sitting: SittingRecord, { appVersion, person, traces = NO_MOTIONS }: Asked): CheckedSitting {
  const { id, body, state, title, startedAt } = sitting;
  const outcome = standingOf(sitting);
  if (state === "running" || outcome === "running") return { kind: "running" };
  try {
    const beside = { outcome, title, startedAt: new Date(startedAt).toISOString(), person };
    return { kind: "ended", shown: sittingShown(body, appVersion, motionsBeside(id, traces), beside) };
  } catch (error) {
    if (error instanceof DrillError) return { kind: "unreadable", problem: error.message };
    throw error;
  }
}

/** Checks that are remembered: replaying the tries of a long sitting takes a moment. */
const MOST_KNOWN = 1000;
const known = new Map<string, CheckedSitting>();

/** Names all that a check hangs on, to the last letter of the record. */
function nameOf({ id, body, state, verdict, title, startedAt }: SittingRecord, asked: Asked): string {
  const { appVersion, person, traces = NO_MOTIONS } = asked;
  const beside = [...traces]
    .filter(([key]) => key.startsWith(`${id}:`))
    .map(([key, bytes]) => `${key} ${bytes.join()}`);
  return sha256Hex(JSON.stringify([id, body, state, verdict, title, startedAt, appVersion, person, beside]));
}

/**
 * Checks a sitting of a logbook and tells what may be shown of it: what its record says, and never what stands beside.
 *
 * Never throws. One and the same sitting is checked once.
 */
export function checkedSitting(sitting: SittingRecord, asked: Asked): CheckedSitting {
  if (sitting.state === "running") return { kind: "running" };
  const name = nameOf(sitting, asked);
  const found = known.get(name) ?? checked(sitting, asked);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(name, found);
  return found;
}

/**
 * How a sitting stands by its checked record, for lists and filters.
 *
 * @returns null where its record cannot be read or does not check
 */
export function checkedStanding(sitting: SittingRecord, appVersion: string): SittingStanding | null {
  const found = checkedSitting(sitting, { appVersion });
  if (found.kind === "ended") return found.shown.outcome;
  return found.kind === "running" ? "running" : null;
}
