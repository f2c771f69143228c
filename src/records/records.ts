import * as z from "zod/mini";
import { flag, must, oneOf, shortList, shortText, text, turn, whole } from "../lock/fieldSchemas";
import { doubtsSchema } from "../realdial/sources/dialDoubt";
import { sourcesSchema } from "../realdial/sources/sourceSchema";
import { REFUSALS } from "../zeroing/approach";
import { attemptSchema, noteText, stampFields, tagList } from "./attemptRecord";
import { foreign, graduations, id, moment } from "./fields";
import { jobSchema } from "./jobRecord";
import { masteryRuleSchema } from "./masteryRule";

const personSchema = z.object(
  {
    ...stampFields,
    name: text(100),
    part: oneOf(["trainee", "instructor"]),
    /** An invented person of the demo logbook. */
    isDemo: z.optional(flag),
  },
  must("object"),
);

/** Someone who practices here: a local name, no account. */
export type PersonRecord = Readonly<z.infer<typeof personSchema>>;

const zeroReading = z.object(
  {
    turn,
    /** Of the zero mark from the index as drawn, graduations, left positive. */
    deviation: graduations,
    /** What the encoder read at the cam, graduations. */
    cam: z.optional(graduations),
    /** Why it was refused; left out where it was accepted. */
    refusal: z.optional(oneOf(REFUSALS)),
  },
  must("object"),
);

const zeroingSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    profileId: text(80),
    outcome: oneOf(["zero-set", "not-set", "broken-off"]),
    /** In a sitting: it took longer than its station allows, whatever it came to. */
    isLate: z.optional(flag),
    /** In a sitting: turned by something that its station does not admit, whatever it came to. */
    isNotAdmitted: z.optional(flag),
    /** In a sitting: its turns are in doubt, and by its station such a try does not count as right. */
    isDoubtRefused: z.optional(flag),
    /** What turned the dial, where that was not the hands on the screen alone. */
    sources: sourcesSchema,
    /** Why its turns may be miscounted: a device lost the hand in it. */
    doubts: doubtsSchema,
    /** Every reading in the order it was taken, the refused ones too. */
    readings: shortList(zeroReading, 500),
    /** Hidden condition, rules and result, as the zeroing layer writes them. */
    details: z.optional(foreign),
  },
  must("object"),
);

/** One zero calibration with all its readings. */
export type ZeroingRecord = Readonly<z.infer<typeof zeroingSchema>>;

const sittingSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    sheetId: z.optional(id),
    title: shortText(200),
    state: oneOf(["running", "finished", "broken-off"]),
    /** The verdict, once it is finished. */
    verdict: z.optional(oneOf(["passed", "failed", "not shown yet"])),
    tags: z.optional(tagList),
    note: z.optional(noteText),
    /** The sitting itself, as the drill layer writes it. */
    body: foreign,
  },
  must("object"),
);

/** A timed self-test. */
export type SittingRecord = Readonly<z.infer<typeof sittingSchema>>;

const sheetSchema = z.object(
  { ...stampFields, title: text(200), /** As the drill layer writes it. */ body: foreign },
  must("object"),
);

/** A drill sheet that is kept here. */
export type SheetRecord = Readonly<z.infer<typeof sheetSchema>>;

const settingSchema = z.object(
  { ...stampFields, /** Left out for a setting of the machine. */ personId: z.optional(id), value: foreign },
  must("object"),
);

/** One setting; its id names it. */
export type SettingRecord = Readonly<z.infer<typeof settingSchema>>;

const declarationSchema = z.object(
  {
    ...stampFields,
    personId: id,
    profileId: text(80),
    exercise: text(60),
    declaredAt: moment,
    /** Attempts that it took, from the first. */
    attempts: whole(1, 1e9),
    /** The rule it was shown by, where that is not the usual one. */
    rule: z.optional(masteryRuleSchema),
    /** What turned the dial of these attempts, all of one hand, where that was not the hands on the screen alone. */
    sources: sourcesSchema,
  },
  must("object"),
);

/** That someone has shown a skill, once. Whether that still holds is worked out (`readiness`). */
export type DeclarationRecord = Readonly<z.infer<typeof declarationSchema>>;

const handoverRunSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    /** Until it ends or is discarded. */
    isRunning: flag,
    /** Steps and work under way, as the handover layer writes them: text or plain data. */
    body: foreign,
  },
  must("object"),
);

/** A handover under way, so that a reload or a killed browser goes on with it. It stays on its device: no file holds it. */
export type HandoverRunRecord = Readonly<z.infer<typeof handoverRunSchema>>;

/** Schema of each kind of record, by the name of its table. */
export const RECORD_SCHEMAS = {
  people: personSchema,
  attempts: attemptSchema,
  zeroings: zeroingSchema,
  jobs: jobSchema,
  sittings: sittingSchema,
  sheets: sheetSchema,
  settings: settingSchema,
  declarations: declarationSchema,
  handoverRuns: handoverRunSchema,
} as const;

/** A kind of record: the name of its table. */
export type RecordKind = keyof typeof RECORD_SCHEMAS;

/** The record of each kind. */
export type RecordOf = { readonly [Kind in RecordKind]: Readonly<z.infer<(typeof RECORD_SCHEMAS)[Kind]>> };

/** Every kind, people first, so that whoever a record belongs to comes before it. */
export const RECORD_KINDS = Object.keys(RECORD_SCHEMAS) as readonly RecordKind[];

/** Kinds whose every record belongs to a person. */
export const PERSONAL_KINDS = [
  "attempts",
  "zeroings",
  "jobs",
  "sittings",
  "declarations",
  "handoverRuns",
] as const satisfies RecordKind[];
