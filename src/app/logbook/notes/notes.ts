import { type AttemptRecord, TAG_LIMITS } from "../../../records/attemptRecord";
import type { JobRecord } from "../../../records/jobRecord";
import type { RecordOf, SittingRecord } from "../../../records/records";
import type { Logbook } from "../../../store/logbook";
import type { LogbookWrite } from "../../../store/logbookWrite";

/** Tags and note of a record, as they are typed: tags with commas between. */
export interface TypedNote {
  readonly tags: string;
  readonly note: string;
}

/** What of a record can be noted. */
type Noted = Pick<AttemptRecord | JobRecord | SittingRecord, "tags" | "note">;

/** Tags and note of a record, to be typed over. */
export const typedNote = ({ tags = [], note = "" }: Noted): TypedNote => ({ tags: tags.join(", "), note });

/** Tags as typed: each once, without spaces at their ends. */
export function tagsOf(typed: string): string[] {
  const tags = typed.split(",").map((tag) => tag.trim().replace(/\s+/g, " "));
  return [...new Set(tags.filter((tag) => tag !== ""))];
}

/** Why tags or a note cannot be kept, in a sentence, or null. */
export function noteProblem({ tags, note }: TypedNote): string | null {
  const list = tagsOf(tags);
  const long = list.find(({ length }) => length > TAG_LIMITS.letters);
  if (long !== undefined) return `Use at most ${TAG_LIMITS.letters} letters in a tag, not ${long.length}.`;
  if (list.length > TAG_LIMITS.tags) return `Use at most ${TAG_LIMITS.tags} tags, not ${list.length}.`;
  if (note.length > TAG_LIMITS.note) return `Use at most ${TAG_LIMITS.note} letters in a note, not ${note.length}.`;
  return null;
}

/** Records that can be noted. */
export type NotedKind = "attempts" | "sittings" | "jobs";

/**
 * Saves a record with other tags and another note; an empty note is none.
 *
 * @param now - milliseconds since 1970
 * @returns the record as it is then
 */
export async function noteRecord<Kind extends NotedKind>(
  logbook: Logbook,
  kind: Kind,
  before: RecordOf[Kind],
  typed: TypedNote,
  now: number,
): Promise<RecordOf[Kind]> {
  const { note: _before, ...rest } = before;
  const note = typed.note.trim();
  // Later than what it takes the place of, whatever the clock says.
  const updatedAt = Math.max(now, before.updatedAt + 1);
  const record = { ...rest, tags: tagsOf(typed.tags), ...(note !== "" && { note }), updatedAt } as RecordOf[Kind];
  await logbook.save({ kind, record } as LogbookWrite);
  return record;
}
