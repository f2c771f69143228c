import { csvParse } from "d3-dsv";
import { describe, expect, test } from "vitest";
import run from "../../shared/handovers/clean.json" with { type: "json" };
import { parseRun, writeRun } from "../../src/handover/run/recordedRun";
import type { DialDoubt } from "../../src/realdial/sources/dialDoubt";
import { describeSource, type SourceDescription } from "../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../src/realdial/sources/sourcesSeen";
import { jobsCsv } from "../../src/records/csv/jobsCsv";
import { zeroingsCsv } from "../../src/records/csv/zeroingsCsv";
import { readLogbookFile, writeLogbookFile } from "../../src/records/file/logbookFile";
import { checkHandoverRecord } from "../../src/records/handover/checkHandoverRecord";
import { handoverSentences } from "../../src/records/handover/handoverCheckWords";
import { handoverRecord, parseHandoverRecord } from "../../src/records/handover/handoverRecord";
import { recordHash } from "../../src/records/hashedRecord";
import type { JobRecord } from "../../src/records/jobRecord";
import type { LogbookContents } from "../../src/records/logbookContents";
import { type DeclarationRecord, RECORD_SCHEMAS, type ZeroingRecord } from "../../src/records/records";
import { declarationParts, jobParts, zeroingParts } from "../../src/records/xapi/tryStatements";
import { aJob, aPerson, contents, NOON } from "../support/logbookRecords";
import { RECORD_FACTS } from "../support/savedHandoverRecord";

const PRINTED = describeSource("printed-dial", 0.02, 0.013);
const KNOB = describeSource("midi", 1.5625);
const TEXT = "printed-dial (0.02, noise 0.013)";

const aZeroing = (id: string, other: Partial<ZeroingRecord> = {}): ZeroingRecord => ({
  ...{ id, createdAt: NOON, updatedAt: NOON, personId: "tavro", startedAt: NOON },
  ...{ profileId: "dial-encoder", outcome: "zero-set", readings: [] },
  ...other,
});
const aDeclaration = (id: string, other: Partial<DeclarationRecord> = {}): DeclarationRecord => ({
  ...{ id, createdAt: NOON, updatedAt: NOON, personId: "tavro", declaredAt: NOON },
  ...{ profileId: "three-wheel", exercise: "open", attempts: 12 },
  ...other,
});

const TURNED = { sources: [PRINTED] };
const DOUBTED = { ...TURNED, doubts: ["sight-lost", "gap"] } satisfies Partial<JobRecord>;
const book: LogbookContents = {
  ...contents([aPerson("tavro")]),
  records: {
    ...contents([aPerson("tavro")]).records,
    jobs: [aJob("plain"), aJob("turned", DOUBTED)],
    zeroings: [aZeroing("plain"), aZeroing("turned", { sources: [SCREEN_SOURCE, PRINTED], isNotAdmitted: true })],
    declarations: [aDeclaration("plain"), aDeclaration("turned", TURNED)],
  },
};

describe("what turned the dial", () => {
  test.each([
    ["jobs", aJob("one")],
    ["zeroings", aZeroing("one")],
    ["declarations", aDeclaration("one")],
  ] as const)("of %s is read, and may be left out as before", (kind, record) => {
    const schema = RECORD_SCHEMAS[kind];
    expect(schema.parse(record)).toEqual(record);
    expect(schema.parse({ ...record, ...TURNED })).toMatchObject(TURNED);
    for (const sources of [[{ kind: "hammer" }], "encoder", [null], Array(9).fill(PRINTED)])
      expect(schema.safeParse({ ...record, sources }).success).toBe(false);
  });

  test("goes through a logbook file unchanged", () => {
    const { jobs, zeroings, declarations } = readLogbookFile(writeLogbookFile(book, NOON)).records;
    expect({ jobs, zeroings, declarations }).toEqual({
      jobs: book.records.jobs,
      zeroings: book.records.zeroings,
      declarations: book.records.declarations,
    });
  });

  test("is a column of jobs and of zeroings", () => {
    const cells = (csv: string) =>
      csvParse(csv).map(({ id, turned_by, not_admitted }) => [id, turned_by, not_admitted]);
    expect(csvParse(jobsCsv(book)).map(({ turns_in_doubt }) => turns_in_doubt)).toEqual(["", "sight-lost; gap"]);
    expect(cells(jobsCsv(book))).toEqual([
      ["plain", "screen", undefined],
      ["turned", TEXT, undefined],
    ]);
    expect(cells(zeroingsCsv(book))).toEqual([
      ["plain", "screen", "0"],
      ["turned", `screen; ${TEXT}`, "1"],
    ]);
  });

  test("is stated of a job, a zeroing and a skill shown, where it was not the screen alone", () => {
    const { jobs, zeroings, declarations } = book.records;
    const stated = [
      ...jobs.map((one) => jobParts(one)),
      ...zeroings.map((one) => zeroingParts(one, undefined)),
      ...declarations.map((one) => declarationParts(one)),
    ].map(({ result }) => Object.entries(result.extensions ?? {}).find(([key]) => key.endsWith("turned-by"))?.[1]);
    expect(stated).toEqual([undefined, [TEXT], undefined, ["screen", TEXT], undefined, [TEXT]]);
  });
});

describe("a handover", () => {
  test("keeps it in its recorded run", () => {
    const turned = { ...parseRun(run), ...DOUBTED };
    expect(parseRun(JSON.parse(writeRun(turned, turned.profile.id)))).toEqual(turned);
    expect(parseRun(run)).not.toHaveProperty("sources");
    expect(parseRun(run)).not.toHaveProperty("doubts");
  });

  const checked = (sources?: readonly SourceDescription[], doubts?: readonly DialDoubt[]) => {
    const record = handoverRecord({ ...RECORD_FACTS, sources, doubts });
    const file = JSON.parse(JSON.stringify({ record, sha256: recordHash(record) }));
    return handoverSentences(checkHandoverRecord(file).problems);
  };

  test.each([[[PRINTED]], [[SCREEN_SOURCE, KNOB]]])("whose record names %j is sound", (sources) => {
    expect(checked(sources)).toEqual([]);
  });

  test.each<[string, readonly SourceDescription[], string]>([
    ["none", [], "The record lists what turned the dial, but the list is empty."],
    ["a coarse knob as a fine one", [{ ...KNOB, isCoarse: false }], "does not call it coarse."],
    ["one source twice", [PRINTED, PRINTED], "lists the same source of turning twice."],
  ])("whose record names %s is not", (_, sources, says) => {
    expect(checked(sources).join(" ")).toContain(says);
  });

  test("has the doubts of its turns in its record, and none where there are none", () => {
    const doubted = handoverRecord({ ...RECORD_FACTS, sources: [PRINTED], doubts: ["sight-lost"] });
    expect(parseHandoverRecord(JSON.parse(JSON.stringify(doubted)))).toEqual(doubted);
    expect(doubted.doubts).toEqual(["sight-lost"]);
    expect(handoverRecord(RECORD_FACTS)).not.toHaveProperty("doubts");
    expect(checked([PRINTED], ["sight-lost", "hidden"])).toEqual([]);
  });

  test.each<[string, readonly SourceDescription[] | undefined, readonly DialDoubt[], string]>([
    ["where the screen alone turned it", undefined, ["gap"], "has turns in doubt, but no device turned its dial."],
    ["twice", [PRINTED], ["gap", "gap"], "gives the same doubt of its turns twice."],
  ])("whose record doubts its turns %s does not fit together", (_, sources, doubts, says) => {
    expect(checked(sources, doubts)).toEqual([`The record ${says}`]);
  });
});
