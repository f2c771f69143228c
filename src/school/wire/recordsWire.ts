import * as z from "zod/mini";
import { oneOf, shortList, shortText, strict, whole } from "../../lock/fieldSchemas";
import { attemptSchema, noteText, tagList } from "../../records/attemptRecord";
import { id, moment } from "../../records/fields";
import { jobSchema } from "../../records/jobRecord";
import { RECORD_SCHEMAS } from "../../records/records";

/** Kinds of records that a bench sends: what people did, never what is set up on a bench or under way there. */
export const SENT_KINDS = ["attempts", "zeroings", "jobs", "sittings", "declarations"] as const;

/** A kind of record that a bench sends. */
export type SentKind = (typeof SENT_KINDS)[number];

/** Most records in one part, and most letters of one packed motion (base64). */
export const PART_LIMITS = { records: 200, motion: 2_000_000, bytes: 4 * 2 ** 20 } as const;

const sentSchema = z.discriminatedUnion("kind", [
  strict({ kind: z.literal("attempts"), record: attemptSchema, motion: z.optional(shortText(PART_LIMITS.motion)) }),
  strict({ kind: z.literal("zeroings"), record: RECORD_SCHEMAS.zeroings }),
  strict({ kind: z.literal("jobs"), record: jobSchema }),
  strict({ kind: z.literal("sittings"), record: RECORD_SCHEMAS.sittings }),
  strict({ kind: z.literal("declarations"), record: RECORD_SCHEMAS.declarations }),
]);

/** A record as a bench sends it: ended, with its motion beside it. Its `personId` is a person of the school. */
export type SentRecord = Readonly<z.infer<typeof sentSchema>>;

/** What a bench sends at once. Each record stands for itself: a bad one does not keep the others back. */
export const recordsPart = strict({
  /** The bench's clock when it sends, so that the server knows how far that is off. */
  sentAt: moment,
  /** Each is checked by `sentSchema` by itself. */
  records: z.array(z.unknown()).check(z.maxLength(PART_LIMITS.records)),
});

/** Schema of one record in a part. */
export const sentRecord = sentSchema;

/** What became of a record: stored now, there already, or refused and why; one that was erased is not taken again. */
export const RECEIPTS = ["received", "known", "refused", "erased"] as const;

const problem = z.object({
  code: z.string(),
  path: z.array(z.union([z.string(), z.number()])),
  values: z.record(z.string(), z.unknown()),
});

/** What became of each record of a part, in its order. Nothing that is told as received is ever lost. */
export const recordsReceipt = strict({
  now: moment,
  receipts: z.array(strict({ id: z.nullable(z.string()), outcome: oneOf(RECEIPTS), problem: z.optional(problem) })),
});

/** A change of tags or note: made on top of a version of them; two made on top of one: the later stands, both are kept. */
export const recordEdits = strict({
  edits: shortList(
    strict({ recordId: id, base: whole(0, 1e9), tags: z.optional(tagList), note: z.optional(noteText), at: moment }),
    PART_LIMITS.records,
  ),
});

/** Tags and note as they hold now, after edits. */
export const editsReceipt = strict({
  edits: z.array(
    strict({
      recordId: z.string(),
      outcome: oneOf(["taken", "other-holds", "no-record"]),
      version: z.number(),
      tags: z.optional(z.array(z.string())),
      note: z.optional(z.string()),
    }),
  ),
});

/** Records that are to be deleted: that they were there stays known, what they were does not. */
export const recordDeletions = strict({ records: shortList(id, PART_LIMITS.records) });

/** What became of each. A sitting and its tries stay where a bench asks: a result is not the candidate's to delete. */
export const deletionsReceipt = strict({
  deletions: z.array(strict({ recordId: z.string(), outcome: oneOf(["deleted", "no-record", "stays"]) })),
});

/** What stays of a person whose data was erased, each with a reason that is told. */
export const STAYS_OF_ERASED = ["chain", "backups", "files", "benches"] as const;

/** A person's data was erased. */
export const erasedReceipt = strict({ records: z.number(), stays: z.array(oneOf(STAYS_OF_ERASED)) });

/** Forms in which records are given out. */
export const EXPORT_FORMS = ["logbook", "attempts", "zeroings", "jobs", "sittings", "xapi"] as const;

/** A form of an export: a logbook file, a table as CSV, or statements of xAPI. */
export type ExportForm = (typeof EXPORT_FORMS)[number];
