import { recordingKey } from "../records/motion/sameRecordings";
import { motionsByTry, sittingMotions } from "../records/motion/sittingMotions";
import type { Logbook } from "./logbook";
import type { LogbookDatabase } from "./logbookDatabase";

/** Whose recordings were found again, by name, with the tries of the record that have them, from 1. */
type Found = Map<string, Set<number>>;

/** The tries of a record by what tells their recordings from others. */
function triesByKey(motions: readonly (Uint8Array | null)[]): Map<string, number> {
  return new Map(
    motions.flatMap((bytes, index) => {
      const key = bytes === null ? null : recordingKey(bytes);
      return key === null ? [] : [[key, index + 1] as const];
    }),
  );
}

const lengthsOf = (motions: readonly (Uint8Array | null)[]) =>
  new Set(motions.flatMap((bytes) => (bytes === null ? [] : [bytes.length])));

/** Looks through the tables, one recording at a time: a whole logbook of them would fill the memory. */
async function findIn(
  database: LogbookDatabase,
  sha256: string,
  motions: readonly (Uint8Array | null)[],
): Promise<Found> {
  const tries = triesByKey(motions);
  const lengths = lengthsOf(motions);
  const names = new Map((await database.people.toArray()).map(({ id, name }) => [id, name]));
  const own = new Set<string>();
  const hits: { readonly id: string; readonly place: number; readonly personId: string | null }[] = [];
  const look = (id: string, bytes: Uint8Array, personId: string | null) => {
    const key = lengths.has(bytes.length) ? recordingKey(bytes) : null;
    const place = key === null ? undefined : tries.get(key);
    if (place !== undefined) hits.push({ id, place, personId });
  };
  await database.sittings.each((sitting) => {
    if (sittingMotions(sitting.body)?.sha256 === sha256) own.add(sitting.id);
    else for (const [id, bytes] of motionsByTry(sitting)) look(id, bytes, sitting.personId);
  });
  await database.traces.each(({ id, bytes }) => look(id, bytes, null));
  const found: Found = new Map();
  for (const { id, place, personId } of hits) {
    const attempt = personId === null ? await database.attempts.get(id) : undefined;
    if (attempt?.sittingId !== undefined && own.has(attempt.sittingId)) continue;
    const owner = personId ?? attempt?.personId ?? "";
    const name = names.get(owner) ?? "nobody who is still here";
    found.set(name, (found.get(name) ?? new Set()).add(place));
  }
  return found;
}

const placesText = (places: ReadonlySet<number>) =>
  places.size === 1 ? `Try ${[...places].join()} has` : `Tries ${[...places].sort((a, b) => a - b).join(", ")} have`;

/**
 * Says where the recordings of a sitting's record are in this logbook under another attempt: one of the two is a copy.
 *
 * @param body - record and hash, as they come from a file
 * @returns sentences; none where every recording is the record's own, or where there is no logbook to look in
 * @throws {LogbookError} when the storage fails
 */
export async function copiesHere(logbook: Logbook, body: unknown): Promise<readonly string[]> {
  const read = sittingMotions(body);
  if (read === null || triesByKey(read.motions).size === 0) return [];
  const found = await logbook.read((database) => findIn(database, read.sha256, read.motions), new Map() as Found);
  return [...found].map(
    ([name, places]) =>
      `${placesText(places)} the same recording, to the last move, as another attempt in this logbook (${name}). One of them is a copy.`,
  );
}
