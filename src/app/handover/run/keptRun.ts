import * as z from "zod/mini";
import type { RecordForm } from "../../../handover/record/recordForm";
import { replayRun } from "../../../handover/run/checkRun";
import { parseRun, type RecordedRun, writeRun } from "../../../handover/run/recordedRun";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { graduations } from "../../../logbook/fields";
import { keptChangeSchema } from "./changeDeeds";

const numbers = z.array(graduations);
const readings = z.array(z.object({ deviation: graduations, cam: graduations }));

const doorSchema = z.object({
  lock: z.object({
    meant: numbers,
    setTo: z.nullable(numbers),
    dial: graduations,
    slack: z.optional(numbers),
    isOpen: z.boolean(),
    isHeld: z.boolean(),
  }),
  ringTurn: graduations,
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
  // Read by itself: a run whose work under way cannot be read still goes on from its last step.
  underWay: z.optional(z.unknown()),
});

const underWaySchema = z.object({
  door: doorSchema,
  /** The dial as the hand left it, unwrapped graduations. */
  hand: graduations,
  isAtRing: z.boolean(),
  change: z.nullable(keptChangeSchema),
});

/** The lock on the door with its ring and its zero, as it stood after a step. */
export type KeptDoor = z.infer<typeof doorSchema>;

/** What has been done since the last step: ring and zero, and a change of combination. */
export type UnderWay = z.infer<typeof underWaySchema>;

/** A run in progress: what happened, how the lock stood at the beginning and after every step, and how it stands. */
export interface KeptRun {
  readonly run: RecordedRun;
  readonly doors: readonly KeptDoor[];
  readonly form: RecordForm | null;
  readonly underWay: UnderWay | null;
}

/** What was found in this browser. */
export interface Recalled {
  readonly kept: KeptRun | null;
  /** What could not be read of it, in a sentence, or null. */
  readonly problem: string | null;
}

const KEY = "gatefall.handover-run";
/** What could not be read is put by, not thrown away. */
const UNREAD_KEY = "gatefall.handover-run.unread";

/** The profile by its id where it is a shipped one, else whole. */
export const profileToWrite = ({ profile }: RecordedRun) => (SHIPPED_PROFILES.includes(profile) ? profile.id : profile);

/** Keeps a run in this browser. A browser that keeps nothing loses nothing but the resuming. */
export function keepRun({ run, ...rest }: KeptRun): void {
  try {
    const text = JSON.stringify({ version: 1, run: JSON.parse(writeRun(run, profileToWrite(run))), ...rest });
    localStorage.setItem(KEY, text);
  } catch {
    // The run goes on in this tab.
  }
}

/** The run that is kept in this browser. What cannot be read of it is put by, and told. */
export function recallRun(): Recalled {
  let text: string | null = null;
  try {
    text = localStorage.getItem(KEY);
    if (text === null) return { kept: null, problem: null };
    const { run, doors, form, underWay } = keptSchema.parse(JSON.parse(text));
    const kept = { run: parseRun(run), doors, form };
    // A run that cannot have happened, or whose lock is not known after every step, is as good as unread.
    if (doors.length !== replayRun(kept.run).steps.length + 1) return { kept: null, problem: putBy("run") };
    const read = underWaySchema.safeParse(underWay);
    if (read.success) return { kept: { ...kept, underWay: read.data }, problem: null };
    // A run that was kept before this was kept has none.
    const problem = underWay === undefined ? null : putBy("work");
    return { kept: { ...kept, underWay: null }, problem };
  } catch {
    if (text === null) return { kept: null, problem: null };
    return { kept: null, problem: putBy("run") };
  }
}

/** What could not be read: the whole run, or what was under way in it. */
type Unread = "run" | "work";

const UNREAD: Readonly<Record<Unread, string>> = {
  run: "The run that this browser kept cannot be read.",
  work: "What you had under way cannot be read.",
};
const FROM_HERE: Readonly<Record<Unread, string>> = {
  run: "This is a fresh one. Start with the first step.",
  work: "The run stands at its last step. Begin that work again.",
};
const PUT_BY = "It is put by in this browser and not lost.";
const NOT_PUT_BY = "There is no room here to put it by: what you do next takes its place.";

/** The first key under which nothing else is put by: what was put by before stays. */
function unreadKey(text: string): string {
  let key = UNREAD_KEY;
  for (let k = 2; ![null, text].includes(localStorage.getItem(key)); k++) key = `${UNREAD_KEY}.${k}`;
  return key;
}

function isPutBy(): boolean {
  try {
    const text = localStorage.getItem(KEY);
    if (text !== null) localStorage.setItem(unreadKey(text), text);
    return text !== null;
  } catch {
    return false;
  }
}

/** Puts by what cannot be read, where the next step does not write over it. @returns what to tell */
export function putBy(what: Unread): string {
  return [UNREAD[what], isPutBy() ? PUT_BY : NOT_PUT_BY, FROM_HERE[what]].join(" ");
}
