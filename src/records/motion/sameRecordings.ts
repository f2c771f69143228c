import { sha256Hex } from "../../drill/sha256";
import { countText } from "../../wording/amountWords";
import type { LogbookContents } from "../logbookContents";
import type { SittingRecord } from "../records";
import { motionsByTry } from "./sittingMotions";

/** Two hands that did almost nothing may have done the same, bytes of a packed motion. */
const FEW_BYTES = 80;

const textOf = (bytes: Uint8Array) => String.fromCharCode(...bytes.subarray(0, 4096)) + bytes.length;

/** What tells a recording from others, or null where it is too short to be anyone's own. */
export const recordingKey = (bytes: Uint8Array): string | null =>
  bytes.length < FEW_BYTES ? null : sha256Hex(textOf(bytes));

/** Whose recording it is. */
interface Recorded {
  /** Of the attempt; a try of a sitting has one and the same in the record and beside it. */
  readonly id: string;
  readonly personId: string;
}

/**
 * Attempts and tries of sittings under different names or ids that have one and the same recording, to the last move: one
 * of them is a copy. Recording after recording is shown to it; it keeps none of them. Mutable.
 */
export class RecordingCopies {
  /** By what tells a recording from others. */
  private readonly groups = new Map<string, Recorded[]>();
  private readonly names = new Map<string, string>();

  /** Looks at the recording of an attempt. */
  attempt({ id, personId }: Recorded, packed: Uint8Array): void {
    const key = recordingKey(packed);
    if (key === null) return;
    const group = this.groups.get(key);
    if (group === undefined) this.groups.set(key, [{ id, personId }]);
    else if (!group.some((one) => one.id === id && one.personId === personId)) group.push({ id, personId });
  }

  /** Looks at the recordings that the record of a sitting brings along. */
  sitting(sitting: SittingRecord): void {
    for (const [id, packed] of motionsByTry(sitting)) this.attempt({ id, personId: sitting.personId }, packed);
  }

  /** Learns the names of people. */
  people(people: LogbookContents["records"]["people"]): void {
    for (const { id, name } of people) this.names.set(id, name);
  }

  /** One sentence for each group of people; none where every recording is one of its own. */
  get sentences(): readonly string[] {
    const counts = new Map<string, number>();
    for (const group of this.groups.values()) {
      if (group.length < 2) continue;
      const names = new Set(group.map(({ personId }) => this.names.get(personId) ?? personId));
      const together = [...names].sort().join(" and ");
      counts.set(together, (counts.get(together) ?? 0) + 1);
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
  for (const { records, traces } of logbooks) {
    copies.people(records.people);
    for (const attempt of records.attempts) {
      const packed = traces.get(attempt.id);
      if (packed !== undefined) copies.attempt(attempt, packed);
    }
    for (const sitting of records.sittings) copies.sitting(sitting);
  }
  return copies.sentences;
}
