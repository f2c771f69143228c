import Dexie, { type Table, type Transaction } from "dexie";
import type { AttemptRecord } from "../records/attemptRecord";
import type { JobRecord } from "../records/jobRecord";
import { judgedJob } from "../records/jobRight";
import type {
  DeclarationRecord,
  HandoverRunRecord,
  PersonRecord,
  SettingRecord,
  SheetRecord,
  SittingRecord,
  ZeroingRecord,
} from "../records/records";
import { settingsKey } from "../records/settingsKey";
import { triedRight } from "../records/triedRight";
import type { JoiningRow, OutboxRow } from "./marks/outboxMarks";

/** An attempt as it is stored: with what its indexes need. A database has no index over true and false. */
export interface AttemptRow extends AttemptRecord {
  readonly missed: 0 | 1;
  readonly settingsKey: string;
  /** A place in the index for each tag: person, tag, beginning, id. An index over a list takes no other fields beside it. */
  readonly tagKeys: readonly TagKey[];
}

/** Person, tag, beginning (milliseconds since 1970), id of the attempt. */
export type TagKey = readonly [string, string, number, string];

/** The motion of an attempt, apart from it: lists and statistics read thousands of attempts and no trace. */
export interface TraceRow {
  /** Id of the attempt. */
  readonly id: string;
  readonly bytes: Uint8Array;
}

/** An attempt as version 1 stored it. */
type AttemptRowV1 = Omit<AttemptRecord, "tags" | "conditions"> & { readonly trace: Uint8Array };

/** Version of the database that this trainer writes. */
export const DATABASE_VERSION = 6;

/** Name of the database in the browser. */
export const DATABASE_NAME = "gatefall-logbook";

/** Tables and indexes of each version; earlier ones stay, so that their logbooks can be taken over. */
const VERSION_1 = {
  people: "id",
  attempts: "id, personId, startedAt",
  zeroings: "id, personId",
  sittings: "id, personId",
  sheets: "id",
  settings: "id",
};

const VERSION_2 = {
  // The id ends each index, so that attempts of one moment keep an order and pages neither skip nor repeat.
  attempts:
    "id, personId, [personId+startedAt+id], [personId+profileId+startedAt+id], [personId+missed+startedAt+id], [personId+settingsKey]",
  traces: "id",
  zeroings: "id, personId, [personId+startedAt+id]",
  sittings: "id, personId, [personId+startedAt+id]",
  settings: "id, personId",
  declarations: "id, personId",
};

const VERSION_3 = { jobs: "id, personId, [personId+startedAt+id]" };

const VERSION_4 = { attempts: `${VERSION_2.attempts}, *tagKeys`, sittings: `${VERSION_2.sittings}, state` };

const VERSION_5 = { handoverRuns: "id, personId" };

const VERSION_6 = { outbox: "id, personId, [state+from+id]", joinings: "id" };

/** Whether an attempt came to its end without opening, or too late. */
export const isMiss = (attempt: AttemptRecord): boolean => !triedRight(attempt) && attempt.isUnfinished !== true;

/** Places of an attempt in the index of tags, one for each tag. */
const tagKeysOf = ({ personId, tags, startedAt, id }: AttemptRecord): TagKey[] =>
  tags.map((tag): TagKey => [personId, tag, startedAt, id]);

/** The row of an attempt. */
export function attemptRow(attempt: AttemptRecord): AttemptRow {
  return {
    ...attempt,
    missed: isMiss(attempt) ? 1 : 0,
    settingsKey: settingsKey(attempt),
    tagKeys: tagKeysOf(attempt),
  };
}

/** The attempt of a row. */
export function attemptOf({
  missed: _missed,
  settingsKey: _key,
  tagKeys: _tags,
  ...attempt
}: AttemptRow): AttemptRecord {
  return attempt;
}

/** Rows moved at once: a whole logbook of traces would fill the memory. */
const BATCH = 500;

/** Version 1 kept the trace in the attempt, knew no tags and no conditions, and could not list misses. */
async function upgradeToVersion2(transaction: Transaction): Promise<void> {
  const attempts = transaction.table<AttemptRowV1 | AttemptRow, string>("attempts");
  const traces = transaction.table<TraceRow, string>("traces");
  let after = "";
  for (;;) {
    const old = (await attempts.where(":id").above(after).limit(BATCH).toArray()) as AttemptRowV1[];
    if (old.length === 0) return;
    await traces.bulkPut(old.map(({ id, trace }) => ({ id, bytes: trace })));
    await attempts.bulkPut(old.map(({ trace: _trace, ...rest }) => attemptRow({ ...rest, tags: [], conditions: [] })));
    after = old.at(-1)?.id ?? after;
  }
}

/** Version 3 had no index of tags and of sittings under way, and called a job right by a stricter rule than a sitting. */
async function upgradeToVersion4(transaction: Transaction): Promise<void> {
  await transaction
    .table<AttemptRow, string>("attempts")
    .filter(({ tags }) => tags.length > 0)
    .modify((row, place) => {
      place.value = attemptRow(row);
    });
  await transaction
    .table<JobRecord, string>("jobs")
    .toCollection()
    .modify((job, place) => {
      place.value = judgedJob(job);
    });
}

/** The browser's database, and where it comes from in a test. */
export interface DatabaseHost {
  readonly indexedDB: IDBFactory;
  readonly IDBKeyRange: typeof globalThis.IDBKeyRange;
}

/** The browser's own database; undefined where there is none, or asking for it is forbidden. */
function browserHost(): DatabaseHost | undefined {
  try {
    const { indexedDB, IDBKeyRange } = globalThis;
    return indexedDB === undefined ? undefined : { indexedDB, IDBKeyRange };
  } catch {
    return undefined;
  }
}

/** The tables of the logbook in the browser's database. */
export class LogbookDatabase extends Dexie {
  declare readonly people: Table<PersonRecord, string>;
  declare readonly attempts: Table<AttemptRow, string>;
  declare readonly traces: Table<TraceRow, string>;
  declare readonly zeroings: Table<ZeroingRecord, string>;
  declare readonly jobs: Table<JobRecord, string>;
  declare readonly sittings: Table<SittingRecord, string>;
  declare readonly sheets: Table<SheetRecord, string>;
  declare readonly settings: Table<SettingRecord, string>;
  declare readonly declarations: Table<DeclarationRecord, string>;
  declare readonly handoverRuns: Table<HandoverRunRecord, string>;
  declare readonly outbox: Table<OutboxRow, string>;
  declare readonly joinings: Table<JoiningRow, string>;

  /** Undefined where this browser has no database at all. */
  readonly host: DatabaseHost | undefined;

  /** @param host - the browser's own, where left out */
  constructor(name = DATABASE_NAME, host: DatabaseHost | undefined = browserHost()) {
    // A record that is told to be stored outlasts a power cut, not only the page.
    super(name, { ...host, chromeTransactionDurability: "strict" });
    this.host = host;
    this.version(1).stores(VERSION_1);
    this.version(2).stores(VERSION_2).upgrade(upgradeToVersion2);
    this.version(3).stores(VERSION_3);
    this.version(4).stores(VERSION_4).upgrade(upgradeToVersion4);
    this.version(5).stores(VERSION_5);
    this.version(DATABASE_VERSION).stores(VERSION_6);
  }
}
