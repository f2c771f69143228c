import * as z from "zod/mini";
import type { FitCheck } from "../../../../../fitting/fitCheck";
import type { FittingAct } from "../../../../../fitting/fittingAct";
import { fitCheckSchema, fittingActSchema } from "../../../../../fitting/fittingActSchema";
import { replayRun } from "../../../../../handover/run/checkRun";
import type { HandoverRun } from "../../../../../handover/run/handoverRun";
import { parseRun, type RecordedRun, writeRun } from "../../../../../handover/run/recordedRun";
import { SHIPPED_PROFILES } from "../../../../../lock/shippedProfiles";
import { graduations } from "../../../../../records/fields";
import type { RecordForm } from "../../../../../records/handover/recordForm";
import { setTextAside } from "../../../../parts/storage/setAside";
import { keptChangeSchema } from "./changeRecording";

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
  // A run that was kept before it had a name has none.
  mark: z.optional(z.object({ id: z.string(), startedAt: z.number(), count: z.number() })),
  run: z.unknown(),
  doors: z.array(doorSchema),
  form: z.nullable(formSchema),
  // Read by itself: a run whose work under way cannot be read still goes on from its last step.
  underWay: z.optional(z.unknown()),
});

const fittingSchema = z.object({
  acts: z.array(fittingActSchema),
  checks: z.array(fitCheckSchema),
  // A run that was kept before seeds were has none.
  seeds: z.optional(z.array(z.number())),
});

/** What has been done to the parts of a lock since it came, or was taken apart last. */
export interface KeptFitting {
  readonly acts: readonly FittingAct[];
  readonly checks: readonly FitCheck[];
  /** Of the spread of each check's instrument, in the order of the checks; drawn anew where left out. */
  readonly seeds?: readonly number[] | undefined;
}

const underWaySchema = z.object({
  door: doorSchema,
  /** The dial as the hand left it, unwrapped graduations. */
  hand: graduations,
  isAtRing: z.boolean(),
  change: z.nullable(keptChangeSchema),
  fitting: z.optional(fittingSchema),
});

/** The lock on the door with its ring and its zero, as it stood after a step. */
export type KeptDoor = z.infer<typeof doorSchema>;

/** What has been done since the last step: ring and zero, and a change of combination. */
export type UnderWay = Omit<z.infer<typeof underWaySchema>, "fitting"> & { readonly fitting?: KeptFitting | undefined };

/** A run in progress: what happened, how the lock stood at the beginning and after every step, and how it stands. */
export interface KeptRun {
  readonly run: RecordedRun;
  readonly doors: readonly KeptDoor[];
  readonly form: RecordForm | null;
  readonly underWay: UnderWay | null;
  /** Whether it is signed off: then it is final. Left out where it goes on. */
  readonly isEnded?: boolean;
}

/** Of a run that begins. */
export const NOTHING_KEPT = { run: null, doors: [], form: null, underWay: null } as const;

/** How the lock stood after the last step that counts; at the beginning where none does. */
export const lastDoorOf = ({ steps }: HandoverRun, doors: readonly KeptDoor[]): KeptDoor | undefined =>
  doors[steps.findLastIndex(({ isUndone }) => !isUndone) + 1];

/** Which handover it is, and how often it has been kept: of two states of one, the one kept more often is the later. */
export interface RunMark {
  readonly id: string;
  /** Wall time, milliseconds since 1970. */
  readonly startedAt: number;
  readonly count: number;
}

/** A kept run with its mark. */
export interface MarkedRun {
  readonly kept: KeptRun;
  readonly mark: RunMark;
}

/** The mark of a run that was kept before runs had one. */
const UNMARKED: RunMark = { id: "", startedAt: 0, count: 0 };

/** What was found in this browser. */
export interface Recalled {
  readonly kept: KeptRun | null;
  readonly mark: RunMark | null;
  /** What could not be read of it, in a sentence, or null. */
  readonly problem: string | null;
}

/** Where the page's texts have the run. */
export const RUN_KEY = "gatefall.handover-run";

/** The profile by its id where it is a shipped one, else whole. */
export const profileToWrite = ({ profile }: RecordedRun) => (SHIPPED_PROFILES.includes(profile) ? profile.id : profile);

/** A run as plain data, for the page's text and for the database alike. */
export function writeKept({ run, doors, form, underWay }: KeptRun, mark?: RunMark): unknown {
  return { version: 1, mark, run: JSON.parse(writeRun(run, profileToWrite(run))), doors, form, underWay };
}

/** Keeps a run as text in this browser, which is there at once. A browser that keeps no text has the database. */
export function keepRun(kept: KeptRun, mark?: RunMark): void {
  try {
    localStorage.setItem(RUN_KEY, JSON.stringify(writeKept(kept, mark)));
  } catch {
    // The run goes on in this tab.
  }
}

/** What was read of a kept run, and what of it could not be read. */
interface ReadRun {
  readonly marked: MarkedRun | null;
  readonly unread: Unread | null;
}

/** Reads a kept run from outside. */
export function readKept(value: unknown): ReadRun {
  try {
    const { run, doors, form, underWay, mark = UNMARKED } = keptSchema.parse(value);
    const kept = { run: parseRun(run), doors, form };
    const replayed = replayRun(kept.run);
    // A run that cannot have happened, or whose lock is not known after every step, is as good as unread.
    if (doors.length !== replayed.steps.length + 1) return { marked: null, unread: "run" };
    const read = underWaySchema.safeParse(underWay);
    const isEnded = replayed.isHandedOver;
    if (read.success) return { marked: { mark, kept: { ...kept, isEnded, underWay: read.data } }, unread: null };
    // A run that was kept before this was kept has none.
    return {
      marked: { mark, kept: { ...kept, isEnded, underWay: null } },
      unread: underWay === undefined ? null : "work",
    };
  } catch {
    return { marked: null, unread: "run" };
  }
}

function textOf(key: string): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function parsedText(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

const namedSchema = z.object({
  mark: z.optional(z.object({ id: z.string() })),
  run: z.object({ profile: z.unknown(), seed: z.number(), isHandsOff: z.boolean(), fitting: z.optional(z.unknown()) }),
});

/** Which door it is, and how it is worked on: what an address asks for. */
const doorNamed = (
  profile: unknown,
  { seed, isHandsOff, fitting }: Pick<RecordedRun, "seed" | "isHandsOff"> & { fitting?: unknown },
) => JSON.stringify([profile, seed, isHandsOff, fitting !== undefined]);

/** Whether a text has a handover of this name, or one at this run's door. */
export function isRunIn(text: string | null, id: string, recorded: RecordedRun): boolean {
  const { data } = namedSchema.safeParse(text === null ? null : parsedText(text));
  if (data === undefined) return false;
  const { mark, run } = data;
  return mark?.id === id || doorNamed(run.profile, run) === doorNamed(profileToWrite(recorded), recorded);
}

/** The run that is kept as text in this browser. What cannot be read of it is set aside, and told. */
export function recallRun(): Recalled {
  const text = textOf(RUN_KEY);
  if (text === null) return { kept: null, mark: null, problem: null };
  const { marked, unread } = readKept(parsedText(text));
  const problem = unread === null ? null : setAside(unread);
  return { kept: marked?.kept ?? null, mark: marked?.mark ?? null, problem };
}

/** What could not be read: the whole run, or what was under way in it. */
type Unread = "run" | "work";

const UNREAD: Readonly<Record<Unread, string>> = {
  run: "The handover that this browser saved cannot be read.",
  work: "The work you had under way cannot be read.",
};
const FROM_HERE: Readonly<Record<Unread, string>> = {
  run: "This is a new handover. Start with the first step.",
  work: "The handover continues from its last step. Do that work again.",
};
const SET_ASIDE = "A copy is kept in this browser.";
const NOT_SET_ASIDE = "There is no room for a copy: what you do next replaces it.";

/** Sets aside what cannot be read, where the next step does not write over it. @returns what to say */
export function setAside(what: Unread): string {
  return [UNREAD[what], setTextAside(RUN_KEY) ? SET_ASIDE : NOT_SET_ASIDE, FROM_HERE[what]].join(" ");
}
