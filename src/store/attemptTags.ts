import Dexie from "dexie";
import { pendingAttempts } from "./attemptQueries";
import type { Logbook } from "./logbook";
import type { LogbookDatabase, TagKey } from "./logbookDatabase";

/** The first tag of a person after another, by the index; undefined after the last. */
async function tagAfter(database: LogbookDatabase, personId: string, tag: string | null): Promise<string | undefined> {
  const after = tag === null ? [personId] : [personId, tag, Dexie.maxKey];
  // A list comes after every number and every text.
  const keys = await database.attempts.where("tagKeys").between(after, [personId, []]).limit(1).keys();
  return (keys as unknown as readonly TagKey[])[0]?.[1];
}

async function storedTags(database: LogbookDatabase, personId: string): Promise<readonly string[]> {
  const tags: string[] = [];
  for (;;) {
    const next = await tagAfter(database, personId, tags.at(-1) ?? null);
    if (next === undefined) return tags;
    tags.push(next);
  }
}

/**
 * Every tag on a person's attempts, each once, in the order of the alphabet.
 *
 * It leaps from tag to tag in the index, so that it takes as long as there are tags, however many attempts bear them.
 *
 * @throws {LogbookError} when the storage fails
 */
export async function tagsOfAttempts(logbook: Logbook, personId: string): Promise<readonly string[]> {
  const stored = await logbook.read((database) => storedTags(database, personId), []);
  const pending = pendingAttempts(logbook, { personId }).flatMap(({ tags }) => tags);
  return [...new Set([...stored, ...pending])].toSorted((one, other) => one.localeCompare(other));
}
