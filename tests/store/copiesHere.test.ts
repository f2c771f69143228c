import { describe, expect, test } from "vitest";
import { recordHash } from "../../src/records/hashedRecord";
import { type LogbookContents, NO_CONTENTS } from "../../src/records/logbookContents";
import { fromBase64 } from "../../src/records/motion/base64";
import { sameRecordings } from "../../src/records/motion/sameRecordings";
import type { SittingRecord } from "../../src/records/records";
import type { SittingRecord as Sat } from "../../src/records/sitting/sittingRecord";
import { copiesHere } from "../../src/store/copiesHere";
import { mergeIntoLogbook } from "../../src/store/wholeLogbook";
import { anAttempt, aPerson, NOON, openLogbook } from "../support/logbookRecords";
import { satRecord } from "../support/satRecord";

const hashed = async (record: Sat) => ({ record, sha256: recordHash(record) });

async function aSitting(id: string, personId: string, record: Sat): Promise<SittingRecord> {
  const body = (await hashed(record)) as never;
  const stamps = { createdAt: NOON, updatedAt: NOON, startedAt: NOON };
  return { id, ...stamps, personId, title: record.sheet.title, state: "finished", body };
}

/** A logbook of Tavro's sitting, with the attempts of its tries beside it, as the app stores them. */
async function ofTavro(record: Sat): Promise<LogbookContents> {
  const motions = (record.motions ?? []).flatMap((packed, k) =>
    packed === null ? [] : [[`s1:${k + 1}`, fromBase64(packed)] as const],
  );
  const attempts = motions.map(([id]) => anAttempt(id, { sittingId: "s1" }));
  const sittings = [await aSitting("s1", "tavro", record)];
  const records = { ...NO_CONTENTS.records, people: [aPerson("tavro", { name: "Tavro" })], attempts, sittings };
  return { records, traces: new Map(motions) };
}

describe("the recordings of a sitting's record", () => {
  test("are its own where the sitting and its tries are in one logbook", async () => {
    const record = satRecord();
    const own = await ofTavro(record);
    expect(own.traces.size).toBeGreaterThan(0);
    expect(sameRecordings([own, own])).toEqual([]);
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, own);
    expect(await copiesHere(logbook, await hashed(record))).toEqual([]);
  });

  test("are named at the desk where another file has them under another name", async () => {
    const record = satRecord();
    const own = await ofTavro(record);
    const sittings = [await aSitting("s9", "copycat", { ...record, person: "Copycat" })];
    const people = [aPerson("copycat", { name: "Copycat" })];
    const copied = { records: { ...NO_CONTENTS.records, people, sittings }, traces: new Map() };
    const tries = own.traces.size;
    expect(sameRecordings([own, copied])).toEqual([
      `Copycat and Tavro: ${tries} recordings come under more than one attempt, to the last move. One of them is a copy.`,
    ]);
  });

  test("are named when a record is checked that has those of a sitting in this logbook", async () => {
    const record = satRecord();
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, await ofTavro(record));
    const forged = await hashed({ ...record, person: "Copycat" });
    expect(await copiesHere(logbook, forged)).toEqual([
      "Tries 1, 2, 3, 4 have the same recording, to the last move, as another attempt in this logbook (Tavro). One of them is a copy.",
    ]);
  });

  test("are looked for nowhere where there is no record to read", async () => {
    const logbook = await openLogbook();
    await mergeIntoLogbook(logbook, await ofTavro(satRecord()));
    for (const body of [null, 7, {}, { record: { motions: ["?"] }, sha256: "" }]) {
      expect(await copiesHere(logbook, body)).toEqual([]);
    }
  });
});
