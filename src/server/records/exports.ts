import { attemptsCsv } from "../../records/csv/attemptsCsv";
import { jobsCsv } from "../../records/csv/jobsCsv";
import { sittingsCsv } from "../../records/csv/sittingsCsv";
import { zeroingsCsv } from "../../records/csv/zeroingsCsv";
import { writeLogbookFile } from "../../records/file/logbookFile";
import { judgedJob } from "../../records/jobRight";
import type { LogbookContents } from "../../records/logbookContents";
import { NO_CONTENTS } from "../../records/logbookContents";
import type { RecordOf } from "../../records/records";
import { xapiStatements } from "../../records/xapi/xapiStatements";
import { type ExportForm, SENT_KINDS, type SentKind } from "../../school/wire/recordsWire";
import type { World } from "../world/world";

/** Whose records: all of them of one school. */
interface Whose {
  readonly schoolId: string;
  readonly personIds: readonly string[];
}

async function peopleOf({ schoolId, personIds }: Whose, { database }: World): Promise<RecordOf["people"][]> {
  const rows = await database
    .selectFrom("people")
    .select(["id", "name", "created_at", "updated_at"])
    .where("school_id", "=", schoolId)
    .where("id", "in", personIds)
    .where("erased_at", "is", null)
    .execute();
  return rows.map(({ id, name, created_at, updated_at }) => ({
    id,
    name,
    part: "trainee",
    createdAt: created_at,
    updatedAt: updated_at,
  }));
}

/** Tags and notes as they hold now, by record. */
async function editsOf({ schoolId, personIds }: Whose, { database }: World): Promise<ReadonlyMap<string, object>> {
  const rows = await database
    .selectFrom("record_edits")
    .innerJoin("records", (join) =>
      join.onRef("records.school_id", "=", "record_edits.school_id").onRef("records.id", "=", "record_edits.record_id"),
    )
    .select(["record_id", "record_edits.body"])
    .where("record_edits.school_id", "=", schoolId)
    .where("person_id", "in", personIds)
    .orderBy("version")
    .execute();
  return new Map(rows.map(({ record_id, body }) => [record_id, JSON.parse(body)]));
}

/** The records of people as a logbook has them, tags and notes as they hold now. */
export async function logbookOf(whose: Whose, world: World): Promise<LogbookContents> {
  if (whose.personIds.length === 0) return NO_CONTENTS;
  const { schoolId, personIds } = whose;
  const edits = await editsOf(whose, world);
  const rows = await world.database
    .selectFrom("records")
    .select(["id", "kind", "person_id", "body", "motion"])
    .where("school_id", "=", schoolId)
    .where("person_id", "in", personIds)
    .orderBy("place")
    .execute();
  const lists = Object.fromEntries(SENT_KINDS.map((kind): [SentKind, unknown[]] => [kind, []])) as Record<
    SentKind,
    unknown[]
  >;
  const traces = new Map<string, Uint8Array>();
  for (const { id, kind, person_id, body, motion } of rows) {
    // Under whom it is shown: of a merged person a record still has the id that it was sent with.
    lists[kind as SentKind].push({ ...JSON.parse(body), personId: person_id, ...edits.get(id) });
    if (motion !== null) traces.set(id, new Uint8Array(motion));
  }
  const records = {
    ...NO_CONTENTS.records,
    ...lists,
    people: await peopleOf(whose, world),
  } as LogbookContents["records"];
  // Their facts decide, as they do wherever records come from elsewhere.
  return { records: { ...records, jobs: records.jobs.map(judgedJob) }, traces };
}

/** A file to hand out. */
export interface ExportedFile {
  readonly type: string;
  readonly name: string;
  readonly text: string;
}

/** The records of people in one of the forms that the app writes too. */
export async function exported(whose: Whose, form: ExportForm, world: World): Promise<ExportedFile> {
  const contents = await logbookOf(whose, world);
  const csv = (text: string): ExportedFile => ({ type: "text/csv; charset=utf-8", name: `${form}.csv`, text });
  const json = (text: string): ExportedFile => ({ type: "application/json", name: `${form}.json`, text });
  switch (form) {
    case "logbook":
      return json(writeLogbookFile(contents, world.now()));
    case "xapi":
      return json(JSON.stringify(xapiStatements(contents, world.appVersion)));
    case "attempts":
      return csv(attemptsCsv(contents));
    case "zeroings":
      return csv(zeroingsCsv(contents));
    case "jobs":
      return csv(jobsCsv(contents));
    case "sittings":
      return csv(sittingsCsv(contents, world.appVersion));
  }
}
