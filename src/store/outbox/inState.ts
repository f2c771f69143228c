import Dexie from "dexie";
import type { LogbookDatabase } from "../logbookDatabase";
import type { OutboxRow } from "../marks/outboxMarks";

/** Rows of the outbox in a state, those first that may go first. @param until - milliseconds since 1970 */
export const inState = ({ outbox }: LogbookDatabase, state: OutboxRow["state"], until: number | typeof Dexie.maxKey) =>
  outbox.where("[state+from+id]").between([state, Dexie.minKey, Dexie.minKey], [state, until, Dexie.maxKey]);

/** Rows in a state that go only after a moment. @param moment - milliseconds since 1970 */
export const beyond = ({ outbox }: LogbookDatabase, state: OutboxRow["state"], moment: number) =>
  outbox.where("[state+from+id]").between([state, moment, Dexie.maxKey], [state, Dexie.maxKey, Dexie.maxKey]);
