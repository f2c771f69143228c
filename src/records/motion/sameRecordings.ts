import { sha256Hex } from "../../drill/sha256";
import { countText } from "../../wording/amountWords";
import type { LogbookContents } from "../logbookContents";
import { motionsByTry } from "./sittingMotions";

/** Two hands that did almost nothing may have done the same, bytes of a packed motion. */
const FEW_BYTES = 80;

const textOf = (bytes: Uint8Array) => String.fromCharCode(...bytes.subarray(0, 4096)) + bytes.length;

/** What tells a recording from others, or null where it is too short to be anyone's own. */
export const recordingKey = (bytes: Uint8Array): string | null =>
  bytes.length < FEW_BYTES ? null : sha256Hex(textOf(bytes));

/** A recording of a logbook: of an attempt, or of a try in the record of a sitting. */
interface Recorded {
  /** Of the attempt; a try of a sitting has one and the same in the record and beside it. */
  readonly id: string;
  readonly personId: string;
  readonly bytes: Uint8Array;
}

function* recordingsOf({ records, traces }: LogbookContents): Generator<Recorded> {
  for (const { id, personId } of records.attempts) {
    const bytes = traces.get(id);
    if (bytes !== undefined) yield { id, personId, bytes };
  }
  for (const sitting of records.sittings) {
    for (const [id, bytes] of motionsByTry(sitting)) yield { id, personId: sitting.personId, bytes };
  }
}

/**
 * Attempts and tries of sittings under different names or ids that have one and the same recording, to the last move: one
 * of them is a copy. Logbook after logbook is shown to it; it keeps none of them. Mutable.
 */
export class RecordingCopies {
  /** Names by person and id, by what tells a recording from others. */
  private readonly groups = new Map<string, Map<string, string>>();

  /** Looks at the recordings of a logbook. */
  add(logbook: LogbookContents): void {
    const names = new Map(logbook.records.people.map(({ id, name }) => [id, name]));
    for (const { id, personId, bytes } of recordingsOf(logbook)) {
      const key = recordingKey(bytes);
      if (key === null) continue;
      const group = this.groups.get(key) ?? new Map<string, string>();
      this.groups.set(key, group.set(`${personId} ${id}`, names.get(personId) ?? personId));
    }
  }

  /** One sentence for each group of people; none where every recording is one of its own. */
  get sentences(): readonly string[] {
    const counts = new Map<string, number>();
    for (const group of this.groups.values()) {
      if (group.size < 2) continue;
      const names = [...new Set(group.values())].sort().join(" and ");
      counts.set(names, (counts.get(names) ?? 0) + 1);
    }
    return [...counts].map(
      ([names, count]) =>
        `${names}: ${countText(count, "recording comes", "recordings come")} under more than one attempt, to the last move. One of them is a copy.`,
    );
  }
}

/** The sentences of `RecordingCopies` for some logbooks. */
export function sameRecordings(logbooks: readonly LogbookContents[]): readonly string[] {
  const copies = new RecordingCopies();
  for (const logbook of logbooks) copies.add(logbook);
  return copies.sentences;
}
