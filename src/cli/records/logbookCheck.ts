import type { AttemptRecord } from "../../records/attemptRecord";
import { type FileKind, LogbookReading } from "../../records/file/logbookReading";
import { Misfits } from "../../records/file/replayedAttempts";
import type { RecordingCopies } from "../../records/motion/sameRecordings";
import { unknownPerson } from "../../records/owners";
import type { SittingRecord } from "../../records/records";
import { type CheckedSitting, checkedSitting } from "../../records/sitting/checkedSitting";
import { isTryOfSitting } from "../../records/tryOfSitting";
import type { Problem } from "../../wording/problem";
import type { RecordLists } from "./streamedFile";

/** What a logbook holds, how far it bears itself out, and its sittings. */
interface LogbookChecked {
  readonly people: number;
  readonly attempts: number;
  readonly sittings: number;
  /** Sittings that go on. */
  readonly running: number;
  readonly problems: readonly Problem[];
  /** What speaks not against the logbook. */
  readonly remarks: readonly Problem[];
  /** Each sitting, as its own record tells it. */
  readonly checked: readonly CheckedSitting[];
}

/** As much of an attempt as is needed of it once it was replayed. */
const bare = (record: AttemptRecord): AttemptRecord => ({
  ...record,
  ownProfile: undefined,
  note: undefined,
  combination: [],
  conditions: [],
  tags: [],
  faults: [],
  stops: [],
});

/** Whether a remark speaks against a logbook. Of what a job came to an earlier version had another rule, in good faith. */
const isAgainst = ({ code }: Problem) => code !== "jobs-judged";

/**
 * The check of a logbook, record by record: attempts are replayed as they come, and sittings checked as soon as people and
 * attempts have been read, which every version writes before them. No motion is kept but those of tries in sittings. Mutable.
 */
export class LogbookCheck implements RecordLists {
  private readonly reading: LogbookReading;
  private readonly misfits = new Misfits();
  private readonly version: string;
  private readonly copies: RecordingCopies;
  private readonly ended = new Set<FileKind>();
  private readonly sittings = new Map<string, CheckedSitting>();
  private names: ReadonlyMap<string, string> | undefined;

  /**
   * @param characters - of the file that were read
   * @param version - the version that checks
   * @param copies - hears of every recording
   */
  constructor(characters: () => number, version: string, copies: RecordingCopies) {
    this.version = version;
    this.copies = copies;
    this.reading = new LogbookReading(characters, {
      attempt: (record, motion, packed) => {
        this.misfits.replay(record, () => motion);
        if (packed !== undefined) copies.attempt(record, packed);
        return [bare(record), isTryOfSitting(record) ? packed : undefined];
      },
      sitting: (record) => this.sitting(record),
      isReplayed: true,
    });
  }

  record(kind: FileKind, value: unknown, place: number): void {
    this.reading.record(kind, value, place);
  }

  noList(kind: FileKind): void {
    this.reading.noList(kind);
  }

  listEnds(kind: FileKind): void {
    this.ended.add(kind);
  }

  /**
   * What it came to, once the whole file was read.
   *
   * @throws {FileError} for what is no logbook
   */
  end(head: unknown): LogbookChecked {
    const { remarks, ...contents } = this.reading.end(head);
    const { people, attempts, sittings } = contents.records;
    this.copies.people(people);
    return {
      people: people.length,
      attempts: attempts.length,
      sittings: sittings.length,
      running: sittings.filter(({ state }) => state === "running").length,
      problems: [...remarks.filter(isAgainst), ...this.misfits.leaveOut(contents).leftOut],
      remarks: remarks.filter((one) => !isAgainst(one)),
      checked: sittings.map((sitting) => this.sittings.get(sitting.id) ?? this.checked(sitting)),
    };
  }

  private sitting(record: SittingRecord): SittingRecord {
    this.copies.sitting(record);
    this.sittings.delete(record.id);
    if (!this.ended.has("people") || !this.ended.has("attempts")) return record;
    this.sittings.set(record.id, this.checked(record));
    return { ...record, body: null };
  }

  private checked(sitting: SittingRecord): CheckedSitting {
    const { people, traces } = this.reading;
    this.names ??= new Map(people.map(({ id, name }) => [id, name]));
    const person = this.names.get(sitting.personId) ?? unknownPerson(sitting.personId, 0).name;
    return checkedSitting(sitting, { appVersion: this.version, person, traces });
  }
}
