import type { TryResult } from "../../drill/marking/tryResult";
import { parseSheet } from "../../drill/sheet/parseSheet";
import type { Sheet } from "../../drill/sheet/sheet";
import type { RecordedAnswer } from "../../drill/sittingRecord";
import type { Milliseconds } from "../../lock/dial";

/** A sitting as it is kept while it goes on: enough to go on with it after a crash. */
export interface SittingProgress {
  readonly format: "gatefall-sitting-progress";
  readonly version: 1;
  readonly id: string;
  readonly sheet: Sheet;
  readonly seed: number;
  readonly person: string | null;
  /** ISO 8601. */
  readonly startedAt: string;
  /** The chart, as it persists itself; null before it was first kept. */
  readonly snapshot: unknown;
  readonly tries: readonly TryResult[];
  readonly answers: readonly RecordedAnswer[];
  /** Last moment that the sitting was seen to go on, milliseconds since 1970. */
  readonly lastSeen_ms: Milliseconds;
}

/** A sitting that has just been set up. */
export function newProgress(fields: Pick<SittingProgress, "id" | "sheet" | "seed" | "person">): SittingProgress {
  return {
    format: "gatefall-sitting-progress",
    version: 1,
    ...fields,
    startedAt: "",
    snapshot: null,
    tries: [],
    answers: [],
    lastSeen_ms: 0,
  };
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;

const hasLists = (value: Record<string, unknown>) => Array.isArray(value.tries) && Array.isArray(value.answers);

const hasNumbers = ({ seed, lastSeen_ms }: Record<string, unknown>) =>
  typeof seed === "number" && typeof lastSeen_ms === "number";

const isProgress = (value: unknown): value is SittingProgress =>
  isObject(value) &&
  value.format === "gatefall-sitting-progress" &&
  value.version === 1 &&
  isObject(value.snapshot) &&
  hasLists(value) &&
  hasNumbers(value);

/**
 * Reads what was kept of a sitting.
 *
 * @param text - JSON, or null where nothing is kept
 * @returns null where there is none, or none that can be read
 */
export function readProgress(text: string | null): SittingProgress | null {
  try {
    const value: unknown = JSON.parse(text ?? "null");
    return isProgress(value) ? { ...value, sheet: parseSheet(value.sheet) } : null;
  } catch {
    return null;
  }
}
