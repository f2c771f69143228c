import * as z from "zod/mini";
import { REFUSALS } from "../zeroing/approach";
import { attemptSchema, noteText, stampFields, tagList } from "./attemptRecord";
import { flag, foreign, graduations, id, listOf, moment, named, shortText, turn, whole } from "./fields";
import { jobSchema } from "./jobRecord";
import { masteryRuleSchema } from "./masteryRule";

const personSchema = z.object(
  {
    ...stampFields,
    name: named(100),
    part: z.enum(["trainee", "instructor"], { error: 'must be "trainee" or "instructor"' }),
    /** An invented person of the demo logbook. */
    isDemo: z.optional(flag),
  },
  { error: "must be a person" },
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
    refusal: z.optional(z.enum(REFUSALS, { error: "must be a refusal" })),
  },
  { error: "must be a stop of a zeroing" },
);

const zeroingSchema = z.object(
  {
    ...stampFields,
    personId: id,
    startedAt: moment,
    profileId: named(80),
    outcome: z.enum(["zero-set", "not-set", "broken-off"], { error: "must be the outcome of a zeroing" }),
    /** Every reading in the order it was taken, the refused ones too. */
    readings: listOf(zeroReading, 500, "must be a list of at most 500 stops"),
    /** Hidden condition, rules and result, as the zeroing layer writes them. */
    details: z.optional(foreign),
  },
  { error: "must be a zeroing" },
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
    state: z.enum(["running", "finished", "broken-off"], { error: "must be the state of a sitting" }),
    /** The verdict, once it is finished. */
    verdict: z.optional(z.enum(["passed", "failed", "not shown yet"], { error: "must be a verdict" })),
    tags: z.optional(tagList),
    note: z.optional(noteText),
    /** The sitting itself, as the drill layer writes it. */
    body: foreign,
  },
  { error: "must be a sitting" },
);

/** A timed self-test. */
export type SittingRecord = Readonly<z.infer<typeof sittingSchema>>;

const sheetSchema = z.object(
  { ...stampFields, title: named(200), /** As the drill layer writes it. */ body: foreign },
  { error: "must be a drill sheet" },
);

/** A drill sheet that is kept here. */
export type SheetRecord = Readonly<z.infer<typeof sheetSchema>>;

const settingSchema = z.object(
  { ...stampFields, /** Left out for a setting of the machine. */ personId: z.optional(id), value: foreign },
  { error: "must be a setting" },
);

/** One setting; its id names it. */
export type SettingRecord = Readonly<z.infer<typeof settingSchema>>;

const declarationSchema = z.object(
  {
    ...stampFields,
    personId: id,
    profileId: named(80),
    exercise: named(60),
    declaredAt: moment,
    /** Attempts that it took, from the first. */
    attempts: whole(1, 1e9, "must be a whole number above 0"),
    /** The rule it was shown by, where that is not the usual one. */
    rule: z.optional(masteryRuleSchema),
  },
  { error: "must be a declaration" },
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
  { error: "must be a handover under way" },
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
