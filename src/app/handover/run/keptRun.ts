import * as z from "zod/mini";
import type { RecordForm } from "../../../handover/record/recordForm";
import { parseRun, type RecordedRun, writeRun } from "../../../handover/run/recordedRun";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";

const number = z.number();
const numbers = z.array(number);
const readings = z.array(z.object({ deviation: number, cam: number }));

const doorSchema = z.object({
  lock: z.object({
    meant: numbers,
    setTo: z.nullable(numbers),
    dial: number,
    slack: z.optional(numbers),
    isOpen: z.boolean(),
    isHeld: z.boolean(),
  }),
  ringTurn: number,
  isClamped: z.boolean(),
  accepted: z.object({ right: readings, left: readings }),
});

const text = z.string();
const formSchema = z.object({
  ...{ technician: text, second: text, takenOverBy: text, lock: text, door: text },
  // A run that was kept before the field came has none.
  authorizedBy: z._default(text, ""),
  ...{ date: text, holders: text, remarks: text },
});

const keptSchema = z.object({
  version: z.literal(1),
  run: z.unknown(),
  doors: z.array(doorSchema),
  form: z.nullable(formSchema),
});

/** The lock on the door with its ring and its zero, as it stood after a step. */
export type KeptDoor = z.infer<typeof doorSchema>;

/** A run in progress: what happened, and how the lock stood at the beginning and after every step. */
export interface KeptRun {
  readonly run: RecordedRun;
  readonly doors: readonly KeptDoor[];
  readonly form: RecordForm | null;
}

const KEY = "gatefall.handover-run";
/** What could not be read is put by, not thrown away. */
const UNREAD_KEY = "gatefall.handover-run.unread";

/** The profile by its id where it is a shipped one, else whole. */
export const profileToWrite = ({ profile }: RecordedRun) => (SHIPPED_PROFILES.includes(profile) ? profile.id : profile);

/** Keeps a run in this browser. A browser that keeps nothing loses nothing but the resuming. */
export function keepRun({ run, doors, form }: KeptRun): void {
  try {
    const text = JSON.stringify({ version: 1, run: JSON.parse(writeRun(run, profileToWrite(run))), doors, form });
    localStorage.setItem(KEY, text);
  } catch {
    // The run goes on in this tab.
  }
}

/** The run that is kept in this browser, or null. */
export function recallRun(): KeptRun | null {
  let kept: string | null = null;
  try {
    kept = localStorage.getItem(KEY);
    if (kept === null) return null;
    const { run, doors, form } = keptSchema.parse(JSON.parse(kept));
    return { run: parseRun(run), doors, form };
  } catch {
    if (kept !== null) putBy(kept);
    return null;
  }
}

function putBy(text: string): void {
  try {
    localStorage.setItem(UNREAD_KEY, text);
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was changed.
  }
}
