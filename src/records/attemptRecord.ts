import * as z from "zod/mini";
import type { Help } from "../dialing/advice";
import type { FaultCode } from "../dialing/fault";
import { flag, must, oneOf, shortList, shortText, text, turn, whole, within } from "../lock/fieldSchemas";
import { doubtsSchema } from "../realdial/sources/dialDoubt";
import { sourcesSchema } from "../realdial/sources/sourceSchema";
import { foreign, graduations, id, moment, span } from "./fields";

/** How much help was on the screen, most first. */
export const HELP_LEVELS = ["full", "counts", "silent"] as const satisfies readonly Help[];

/** What to do, how far, and the cutaway; arrivals counted; nothing until the end. */
export type HelpLevel = (typeof HELP_LEVELS)[number];

const FAULT_CODES = [
  "wrong-way",
  "too-few-turns",
  "too-many-turns",
  "stopped-short",
  "ran-past",
  "came-back",
  "extra-turnback",
  "not-drawn",
  "paused-too-long",
] as const satisfies readonly FaultCode[];

const step = whole(1, 6);

const stop = z.object(
  {
    /** Place of the number in the combination, counted from 1. */
    step,
    turn,
    /** Reading of the number, graduations. */
    number: within(0, 200, "graduations"),
    /** Graduations along the turn; positive ran past, negative stopped short. */
    error: within(-100, 100, "graduations"),
    /** Way of the run or runs that led to it, graduations. */
    amplitude: within(0, 2e9, "graduations"),
    /** From the beginning of the turn to its end, the rest on the number included. */
    time_ms: span,
  },
  must("object"),
);

const fault = z.object(
  {
    code: oneOf(FAULT_CODES),
    number: step,
    size: within(0, 2e9, "graduations"),
  },
  must("object"),
);

/** What every record carries. */
export const stampFields = {
  id,
  createdAt: moment,
  /** Wall time of the last change; of two records with one id and one revision the later one holds. */
  updatedAt: moment,
  /** How often the record was written, left out before version 5 counted: the one written more often holds. */
  revision: z.optional(whole(0, 1e12)),
};

/** Longest tag, most tags, and longest note that a record takes. */
export const TAG_LIMITS = { letters: 60, tags: 20, note: 2000 } as const;

/** Words that someone marks a record with. */
export const tagList = shortList(text(TAG_LIMITS.letters), TAG_LIMITS.tags);

/** What someone wrote to a record. */
export const noteText = shortText(TAG_LIMITS.note);

/** Schema of an attempt without its trace. */
export const attemptSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    duration_ms: span,
    profileId: text(80),
    /** The whole profile, where it is none of the shipped ones. */
    ownProfile: z.optional(foreign),
    /** What was practiced: "open" for a whole opening, else a name from the drill sheet. */
    exercise: text(60),
    combination: shortList(graduations, 6),
    help: oneOf(HELP_LEVELS),
    /** What made it harder, each as `conditionCode` writes it. */
    conditions: shortList(text(100), 20),
    /** Drill sheet and sitting that it belongs to. */
    sheetId: z.optional(id),
    sittingId: z.optional(id),
    tags: tagList,
    note: z.optional(noteText),
    /** Own estimate of the size of the worst stop error, given before it was shown, graduations. */
    estimate: z.optional(graduations),
    /**
     * Whether this try opened the lock: a first-time opening. Of an exercise that asks for the first numbers alone,
     * whether they were dialed without fault.
     */
    opened: flag,
    /** In a sitting: it took longer than its station allows, so it does not count as right (`triedRight`). */
    isLate: z.optional(flag),
    /** In a sitting: turned by something that its station does not admit, so it does not count as right. */
    isNotAdmitted: z.optional(flag),
    /** In a sitting: its turns are in doubt, and by its station such a try does not count as right. */
    isDoubtRefused: z.optional(flag),
    /** What turned the dial, where that was not the hands on the screen alone. */
    sources: sourcesSchema,
    /** Why its turns may be miscounted: a device lost the hand in it. */
    doubts: doubtsSchema,
    /**
     * The hand never came to the end of it: the page went away, or it is under way still. It is no miss, and no statistic
     * counts it.
     */
    isUnfinished: z.optional(flag),
    faults: shortList(fault, 200),
    stops: shortList(stop, 6),
  },
  must("object"),
);

/** Schema of what an attempt came to: the part of its record that the engine knows. */
export const outcomeSchema = z.pick(attemptSchema, { opened: true, faults: true, stops: true, isUnfinished: true });

/** One try at a lock: who, what, and what came of it. The motion itself is kept beside it, as a compact trace. */
export type AttemptRecord = Readonly<z.infer<typeof attemptSchema>>;

/** One number dialed in an attempt. */
export type StopRecord = Readonly<AttemptRecord["stops"][number]>;
