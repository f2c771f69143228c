import { sha256Hex } from "../drill/sha256";
import type { LogbookContents } from "./logbookContents";

/** Two hands that did almost nothing may have done the same, bytes of a packed motion. */
const FEW_BYTES = 80;

const textOf = (bytes: Uint8Array) => String.fromCharCode(...bytes.subarray(0, 4096)) + bytes.length;

/** Attempts by their motions. */
function byMotion(logbooks: readonly LogbookContents[]): Map<string, Map<string, string>> {
  const groups = new Map<string, Map<string, string>>();
  for (const { records, traces } of logbooks) {
    const names = new Map(records.people.map(({ id, name }) => [id, name]));
    for (const { id, personId } of records.attempts) {
      const bytes = traces.get(id);
      if (bytes === undefined || bytes.length < FEW_BYTES) continue;
      const key = sha256Hex(textOf(bytes));
      const group = groups.get(key) ?? new Map<string, string>();
      groups.set(key, group.set(`${personId} ${id}`, names.get(personId) ?? personId));
    }
  }
  return groups;
}

/**
 * Attempts under different names or ids that have one and the same recording, to the last move: one of them is a copy.
 *
 * @returns sentences, one for each group of people; none where every recording is one of its own
 */
export function sameRecordings(logbooks: readonly LogbookContents[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const group of byMotion(logbooks).values()) {
    if (group.size < 2) continue;
    const names = [...new Set(group.values())].sort().join(" and ");
    counts.set(names, (counts.get(names) ?? 0) + 1);
  }
  return [...counts].map(
    ([names, count]) =>
      `${names}: ${count === 1 ? "one recording comes" : `${count} recordings come`} under more than one attempt, to the last move. One of them is a copy.`,
  );
}
