import * as z from "zod/mini";
import { matching, must, strict } from "../../lock/fieldSchemas";
import { moment } from "../../records/fields";

/** Entries of one answer. */
export const AUDIT_PAGE = 200;

/** Where to read on: the last entry that was shown. */
export const auditQuery = strict({
  before: z.optional(matching(/^\d{1,15}$/, must("digits", { least: 1, most: 15 }))),
});

/** What instructors changed, the latest first. */
export const auditLog = strict({
  entries: z.array(
    strict({
      id: z.number(),
      at: moment,
      by: strict({ id: z.string(), name: z.string() }),
      /** "class.ended": a topic, and what happened. */
      action: z.string(),
      ofId: z.string(),
      details: z.record(z.string(), z.unknown()),
    }),
  ),
  /** Whether there are older ones. */
  isMore: z.boolean(),
});
