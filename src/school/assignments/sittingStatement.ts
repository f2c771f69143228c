import * as z from "zod/mini";
import { flag, oneOf, share, shortList, shortText, strict, whole } from "../../lock/fieldSchemas";
import { id } from "../../records/fields";
import { ASSIGNMENT_KINDS } from "./assignment";
import { MOST_EXTRA_TIME } from "./extraTime";

/** What a class server states of a sitting that it gave out, beside that its record came in. */
export const sittingStatement = strict({
  assignment: strict({ id, title: shortText(200), kind: oneOf(ASSIGNMENT_KINDS) }),
  /** From 1, of this person at this assignment. */
  attempt: whole(1, 1e6),
  /** When the server gave sheet and seed, by its clock, ISO 8601. */
  begunAt: shortText(40),
  /** Whether the server drew the seed then, or the sheet sets it. */
  seedFrom: oneOf(["server", "sheet"]),
  extraTime_percent: whole(0, MOST_EXTRA_TIME),
  /** Tries that came in as they ended, before the record. */
  triesBefore: whole(0, 8000),
  isLate: flag,
  /** By the server's own marks; null where something does not agree. */
  outcome: z.nullable(oneOf(["passed", "failed", "not shown yet", "broken-off"])),
  /** Share of all that the sheet asks that is right. */
  right: share(0, 1),
  /** Codes of what does not agree. */
  problems: shortList(shortText(60), 10_000),
});

/** What a class server states of a sitting that it gave out. */
export type SittingStatement = Readonly<z.infer<typeof sittingStatement>>;
