import type { Kysely } from "kysely";
import type { Tables } from "../database/tables/tables";

/** What an instructor changed. */
export interface Change {
  readonly schoolId: string;
  /** The instructor. */
  readonly byId: string;
  readonly at: number;
  /** "class.ended": a topic, and what happened. */
  readonly action: string;
  /** Id of what was changed. */
  readonly ofId: string;
  /** What is needed to understand it; never a password, a PIN, a code or a token. */
  readonly details?: Readonly<Record<string, unknown>>;
}

/** Writes down what an instructor changed. @param database - the transaction of the change: one is not there without the other */
export async function writeAudit(
  database: Pick<Kysely<Tables>, "insertInto">,
  { schoolId, byId, at, action, ofId, details = {} }: Change,
): Promise<void> {
  await database
    .insertInto("audit")
    .values({ school_id: schoolId, at, by_id: byId, action, of_id: ofId, details: JSON.stringify(details) })
    .execute();
}
