import { type AttemptRecord, TAG_LIMITS } from "../../../records/attemptRecord";
import type { JobRecord } from "../../../records/jobRecord";
import type { SittingRecord } from "../../../records/records";
import type { Logbook } from "../../../store/logbook";

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

/** A record as it is with other tags and another note; an empty note is none. */
function noted<Kind extends AttemptRecord | JobRecord | SittingRecord>(
  record: Kind,
  { tags, note }: TypedNote,
  now: number,
): Kind {
  const { note: _before, ...rest } = record;
  const text = note.trim();
  // Later than what it takes the place of, whatever the clock says.
  const updatedAt = Math.max(now, record.updatedAt + 1);
  return { ...rest, tags: tagsOf(tags), ...(text !== "" && { note: text }), updatedAt } as Kind;
}

/** Keeps tags and a note of an attempt. @param now - milliseconds since 1970 */
export async function noteAttempt(
  logbook: Logbook,
  attempt: AttemptRecord,
  typed: TypedNote,
  now: number,
): Promise<AttemptRecord> {
  const record = noted(attempt, typed, now);
  await logbook.save({ kind: "attempts", record });
  return record;
}

/** Keeps tags and a note of a sitting. @param now - milliseconds since 1970 */
export async function noteSitting(
  logbook: Logbook,
  sitting: SittingRecord,
  typed: TypedNote,
  now: number,
): Promise<SittingRecord> {
  const record = noted(sitting, typed, now);
  await logbook.save({ kind: "sittings", record });
  return record;
}

/** Keeps tags and a note of a job. @param now - milliseconds since 1970 */
export async function noteJob(logbook: Logbook, job: JobRecord, typed: TypedNote, now: number): Promise<JobRecord> {
  const record = noted(job, typed, now);
  await logbook.save({ kind: "jobs", record });
  return record;
}
