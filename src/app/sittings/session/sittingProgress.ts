import type { TryResult } from "../../../drill/marking/tryResult";
import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import type { Milliseconds } from "../../../lock/dial";
import type { ClockJump, RecordedAnswer, SeedOrigin } from "../../../records/sitting/sittingRecord";

/** A sitting as it is kept while it goes on: enough to go on with it after a crash. */
export interface SittingProgress {
  readonly format: "gatefall-sitting-progress";
  readonly version: 1;
  readonly id: string;
  readonly sheet: Sheet;
  readonly seed: number;
  readonly seedFrom: SeedOrigin;
  /** The assignment that a class server gave it for, or null; then it is sat by whom it was given to. */
  readonly assignmentId: string | null;
  /** Percent that the sheet's times are longer by; 0 where nobody gave more. */
  readonly extraTime_percent: number;
  /** Local name of the candidate, and the id that the logbook has; null where nobody is named. */
  readonly person: string | null;
  readonly personId: string | null;
  /** ISO 8601. */
  readonly startedAt: string;
  /** The chart, as it persists itself; null before it was first kept. */
  readonly snapshot: unknown;
  readonly tries: readonly TryResult[];
  readonly answers: readonly RecordedAnswer[];
  /** Last moment that the sitting was seen to go on, by the steady time of its pages. */
  readonly lastSeen_ms: Milliseconds;
  /** The same moment by the clock on the wall, milliseconds since 1970. */
  readonly lastWall_ms: Milliseconds;
  readonly clockJumps: readonly ClockJump[];
  /** How often it was kept: of two that were kept of one sitting, the one with more goes on. */
  readonly keeps: number;
}

/** A sitting that has just been set up. */
export function newProgress(
  fields: Pick<SittingProgress, "id" | "sheet" | "seed" | "person" | "personId"> & Partial<SittingProgress>,
): SittingProgress {
  return {
    format: "gatefall-sitting-progress",
    version: 1,
    seedFrom: "drawn",
    assignmentId: null,
    extraTime_percent: 0,
    startedAt: "",
    snapshot: null,
    tries: [],
    answers: [],
    lastSeen_ms: 0,
    lastWall_ms: 0,
    clockJumps: [],
    keeps: 0,
    ...fields,
  };
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;

const hasLists = (value: Record<string, unknown>) => Array.isArray(value.tries) && Array.isArray(value.answers);

const hasNumbers = ({ seed, lastSeen_ms }: Record<string, unknown>) =>
  typeof seed === "number" && typeof lastSeen_ms === "number";

/** As it may have been kept by an earlier version. */
type KeptProgress = Omit<SittingProgress, keyof typeof ADDED | "lastWall_ms"> & Partial<SittingProgress>;

const isProgress = (value: unknown): value is KeptProgress =>
  isObject(value) &&
  value.format === "gatefall-sitting-progress" &&
  value.version === 1 &&
  isObject(value.snapshot) &&
  hasLists(value) &&
  hasNumbers(value);

/** Earlier versions did not keep these; their pages went by the wall alone. */
const ADDED = {
  personId: null,
  keeps: 0,
  seedFrom: "drawn",
  clockJumps: [],
  assignmentId: null,
  extraTime_percent: 0,
} as const;

/**
 * Reads what was kept of a sitting.
 *
 * @returns null where there is none, or none that can be read
 */
export function progressOf(value: unknown): SittingProgress | null {
  try {
    return isProgress(value)
      ? { ...ADDED, ...value, lastWall_ms: value.lastWall_ms ?? value.lastSeen_ms, sheet: parseSheet(value.sheet) }
      : null;
  } catch {
    return null;
  }
}

/** Reads what was kept of a sitting as text. @param text - JSON, or null where nothing is kept */
export function readProgress(text: string | null): SittingProgress | null {
  try {
    return progressOf(JSON.parse(text ?? "null"));
  } catch {
    return null;
  }
}

/** What was kept of one sitting in two places: the one that is further on. */
const further = (one: SittingProgress, other: SittingProgress | undefined) =>
  other !== undefined && other.keeps > one.keeps ? other : one;

/**
 * Which sitting goes on after the page was loaded anew.
 *
 * A page has its text safe at once, but a browser that is killed may lose the last minute of it; the logbook comes a
 * moment later, and survives that. So both are asked.
 *
 * @param text - what the page kept as text
 * @param running - what the logbook has as running, latest first
 */
export function sittingToGoOn(
  text: SittingProgress | null,
  running: readonly SittingProgress[],
): SittingProgress | null {
  const [latest = null] = running;
  if (text === null) return latest;
  // The text may also be that of an earlier sitting, which has ended since.
  const isOutdated = latest !== null && latest.id !== text.id && latest.startedAt > text.startedAt;
  return isOutdated
    ? latest
    : further(
        text,
        running.find(({ id }) => id === text.id),
      );
}
