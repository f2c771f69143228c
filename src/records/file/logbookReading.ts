import * as z from "zod/mini";
import type { Motion } from "../../dialing/motion";
import { mayKeepMotion } from "../../realdial/sources/sourceDescription";
import { type TurnedRecord, turningMisfit } from "../../realdial/sources/sourcesMisfit";
import type { Problem } from "../../wording/problem";
import type { AttemptRecord } from "../attemptRecord";
import { moment } from "../fields";
import { fileError, fileProblem } from "../fileWords";
import { hasOtherDefect } from "../job/drawnDefect";
import type { JobRecord } from "../jobRecord";
import { judgedJob } from "../jobRight";
import type { LogbookContents } from "../logbookContents";
import { missingOwners, withOwners } from "../owners";
import { type PersonRecord, RECORD_KINDS, type RecordKind, type SittingRecord } from "../records";
import { MotionReader, RecordList, shortId } from "./fileRecords";
import { Remarks } from "./remarks";

/** What an export calls itself. */
export const FORMAT = "gatefall-logbook";

/** Latest version of the file. A logbook without jobs is written as version 1, which earlier trainers read as well. */
export const FILE_VERSION = 2;

/** Kinds of record that a file holds: a handover under way goes on only where it was begun. */
export type FileKind = Exclude<RecordKind, "handoverRuns">;

/** Every kind that a file holds, people first. */
export const FILE_KINDS = RECORD_KINDS.filter((kind): kind is FileKind => kind !== "handoverRuns");

/** Records that one list of a file may have: more would hold up the page for minutes. */
const MOST_RECORDS = 200_000;

/** @throws {FileError} `too-many` */
export function refuseTooMany(kind: FileKind, count: number): void {
  if (count > MOST_RECORDS) throw fileError("too-many", [], { kind, most: MOST_RECORDS });
}

/** A logbook from a file, and what was repaired or left out. */
export interface ReadLogbook extends LogbookContents {
  readonly remarks: readonly Problem[];
}

const headSchema = z.looseObject({ format: z.unknown(), version: z.unknown() });
const timeSchema = z.object({ exportedAt: moment });

/**
 * The fields of a logbook file, its lists of records not looked at.
 *
 * @param value - whatever a file holds
 * @throws {FileError} for another format, or a version that is not known here
 */
export function checkedHead(value: unknown): Readonly<Record<string, unknown>> {
  const { data } = headSchema.safeParse(value);
  const version = data?.version;
  if (data?.format !== FORMAT) throw fileError("other-format", [], { format: FORMAT });
  const latest = FILE_VERSION;
  if (typeof version !== "number" || !Number.isInteger(version) || version < 1)
    throw fileError("no-version", [], { latest });
  if (version > latest) throw fileError("later-version", [], { version, latest });
  return data;
}

/** What is held of the records that fill most of a file until it has been read, for who does not want them whole. */
export interface Held {
  /** @param motion - undefined where there is none, or none that can be read */
  attempt(record: AttemptRecord, motion: Motion | undefined, packed: Uint8Array | undefined): HeldAttempt;
  sitting(record: SittingRecord): SittingRecord;
  /** Whether every attempt is replayed as well: that leaves out, and names, one that nothing can have turned so. */
  readonly isReplayed?: boolean;
}

/** An attempt and its packed motion, undefined where that is not wanted. */
export type HeldAttempt = readonly [record: AttemptRecord, packed: Uint8Array | undefined];

const asItIs = <One>(record: One) => record;

/** Every record whole. */
export const WHOLE: Held = { attempt: (record, _motion, packed) => [record, packed], sitting: asItIs };

/**
 * The reading of a logbook file, record by record, in whatever order they come: what is sound is taken, what can be
 * repaired is, and the rest is left out and named. Mutable.
 */
export class LogbookReading {
  private readonly remarks = new Remarks();
  private readonly lists = {
    people: new RecordList("people", this.remarks),
    attempts: new RecordList("attempts", this.remarks),
    zeroings: new RecordList("zeroings", this.remarks),
    jobs: new RecordList("jobs", this.remarks),
    sittings: new RecordList("sittings", this.remarks),
    sheets: new RecordList("sheets", this.remarks),
    settings: new RecordList("settings", this.remarks),
    declarations: new RecordList("declarations", this.remarks),
  };
  /** Packed motions of the attempts that were taken so far, as far as they are held. */
  readonly traces = new Map<string, Uint8Array>();
  private readonly motions: MotionReader;
  private readonly held: Held;
  /** Jobs that were recorded against their facts. */
  private readonly corrected = new Set<string>();
  /** Diagnoses with another defect than their seed leads to. */
  private readonly otherDefects = new Set<string>();

  /** @param characters - length of the file, as far as it is known: the most that its motions may unpack to hangs on it */
  constructor(characters: () => number, held: Held = WHOLE) {
    this.motions = new MotionReader(characters, this.remarks);
    this.held = held;
  }

  /**
   * Takes a record of the file, whatever it is.
   *
   * @param place - in its list, counted from 0
   * @throws {FileError} where the list is far too long
   */
  record(kind: FileKind, value: unknown, place: number): void {
    refuseTooMany(kind, place + 1);
    const { lists, held } = this;
    if (kind === "attempts") lists.attempts.add(value, place, (record) => this.attempt(record, value, place));
    else if (kind === "jobs") lists.jobs.add(value, place, (record) => this.job(record, place));
    else if (kind === "sittings") lists.sittings.add(value, place, held.sitting);
    else if (kind === "zeroings") lists.zeroings.add(value, place, (record) => this.turned(kind, record, place));
    else if (kind === "declarations")
      lists.declarations.add(value, place, (record) => this.turned(kind, record, place));
    else lists[kind].add(value, place, asItIs);
  }

  /** Says that what should be a list is none. */
  noList(kind: FileKind): void {
    this.remarks.add(fileProblem("list-left-out", [kind]));
  }

  /** People that were taken so far. */
  get people(): readonly PersonRecord[] {
    return this.lists.people.records;
  }

  /**
   * The logbook, once every record of the file has been taken.
   *
   * @param head - fields of the file
   * @throws {FileError} for another format, or a version that is not known here
   */
  end(head: unknown): ReadLogbook {
    const { remarks, corrected, otherDefects } = this;
    if (!timeSchema.safeParse(checkedHead(head)).success) remarks.add(fileProblem("no-export-time", []));
    if (corrected.size > 0) remarks.add(fileProblem("jobs-judged", [], { count: corrected.size }));
    if (otherDefects.size > 0) remarks.add(fileProblem("jobs-other-defect", [], { count: otherDefects.size }));
    const whole = withEveryPerson({ records: this.records, traces: this.traces }, remarks);
    return { ...whole, remarks: remarks.all };
  }

  private get records(): LogbookContents["records"] {
    const { lists } = this;
    return {
      people: lists.people.records,
      attempts: lists.attempts.records,
      zeroings: lists.zeroings.records,
      jobs: lists.jobs.records,
      sittings: lists.sittings.records,
      sheets: lists.sheets.records,
      settings: lists.settings.records,
      declarations: lists.declarations.records,
      handoverRuns: [],
    };
  }

  private attempt(record: AttemptRecord, value: unknown, place: number): AttemptRecord {
    if (!this.held.isReplayed) this.turned("attempts", record, place);
    const read = mayKeepMotion(record)
      ? this.motions.read(value, place, record.id)
      : this.motions.passOver(value, place, record.id);
    const [held, packed] = this.held.attempt(record, read?.motion, read?.packed);
    if (packed === undefined) this.traces.delete(record.id);
    else this.traces.set(record.id, packed);
    return held;
  }

  /** A record of a turned dial that is not replayed: what cannot have turned it is named, and the record taken. */
  private turned<One extends TurnedRecord & { readonly id: string }>(kind: FileKind, record: One, place: number): One {
    const misfit = turningMisfit(record);
    if (misfit !== null) {
      const why = fileProblem(misfit, []);
      this.remarks.add(fileProblem("turned-impossibly", [kind, place], { id: shortId(record.id), why }));
    }
    return record;
  }

  /** A job from elsewhere, or from an earlier version with another rule: its facts decide. */
  private job(record: JobRecord, place: number): JobRecord {
    this.turned("jobs", record, place);
    if (hasOtherDefect(record)) this.otherDefects.add(record.id);
    else this.otherDefects.delete(record.id);
    const judged = judgedJob(record);
    if (judged.isRight === record.isRight) this.corrected.delete(record.id);
    else this.corrected.add(record.id);
    return judged;
  }
}

/** Every record has its person; who is not in the file gets a name that says so. */
function withEveryPerson(contents: LogbookContents, remarks: Remarks): LogbookContents {
  const whole = withOwners(contents, new Map());
  for (const id of missingOwners(contents).keys()) {
    const name = whole.records.people.find((one) => one.id === id)?.name;
    remarks.add(fileProblem("owner-missing", [], { id, name }));
  }
  return whole;
}
