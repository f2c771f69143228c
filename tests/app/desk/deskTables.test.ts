import { describe, expect, test } from "vitest";
import { cellState, cellWords, masteryWords, stateWord } from "../../../src/app/desk/cellWords";
import { personTables, sittingsTable } from "../../../src/app/desk/personTables";
import { readyLists } from "../../../src/app/desk/readyLists";
import { sittingChecks } from "../../../src/app/desk/sittingChecks";
import { BY_NAME, nextOrder, orderedRows, type TableOrder } from "../../../src/app/desk/tableOrder";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { classTable } from "../../../src/progress/classTable";
import { mastery } from "../../../src/progress/mastery";
import { recordHash } from "../../../src/records/hashedRecord";
import type { SittingRecord } from "../../../src/records/records";
import { skillKey } from "../../../src/records/skill";
import { keptRecord, keptSitting } from "../../support/keptRecord";
import { aJob, anAttempt, aPerson, contents, NOON, stopsOf } from "../../support/logbookRecords";
import { dialingStation, testSheet } from "../../support/testSheet";
import { triesRight } from "../../support/testTries";

const OPEN = { profileId: "three-wheel", exercise: "open" };
const FOUR = { profileId: "four-wheel", exercise: "open" };

const row = (personId: string, results: string) =>
  [...results].map((one, i) =>
    anAttempt(`${personId}${i}`, { personId, startedAt: NOON + i, updatedAt: NOON + i, opened: one === "o" }),
  );

/** Ondrell has shown it, Mibsy is on the way, Dorvik has just begun, Tavro has not. */
const klass = contents(
  ["Tavro", "Mibsy", "Dorvik", "Ondrell"].map((id) => aPerson(id)),
  [...row("Ondrell", "oooooooooooooo"), ...row("Mibsy", "oooo"), ...row("Dorvik", "oo")],
);
const names = new Map(klass.records.people.map(({ id, name }) => [id, name]));
const table = classTable([klass]);
const EVERYONE = { show: "everyone", skill: "all" } as const;
const listed = (order: TableOrder, filter: Parameters<typeof orderedRows>[3] = EVERYONE) =>
  orderedRows(table, names, order, filter).map(({ person }) => person.name);

describe("the order of the table", () => {
  test("is by name, and the other way when pressed again", () => {
    expect(listed(BY_NAME)).toEqual(["Dorvik", "Mibsy", "Ondrell", "Tavro"]);
    expect(listed(nextOrder(BY_NAME, "person"))).toEqual(["Tavro", "Ondrell", "Mibsy", "Dorvik"]);
  });

  test("by a skill has who is ready first, and last who has no attempt", () => {
    const order = nextOrder(BY_NAME, skillKey(OPEN));
    expect(listed(order)).toEqual(["Ondrell", "Mibsy", "Dorvik", "Tavro"]);
    expect(listed(nextOrder(order, skillKey(OPEN)))).toEqual(["Tavro", "Dorvik", "Mibsy", "Ondrell"]);
  });

  test("by skills shown leaves equals by name", () => {
    expect(listed(nextOrder(BY_NAME, "all"))).toEqual(["Ondrell", "Dorvik", "Mibsy", "Tavro"]);
    const called = new Map([...names, ["Dorvik", "Zed"]]);
    const rows = orderedRows(table, called, nextOrder(BY_NAME, "all"), EVERYONE);
    expect(rows.map(({ person }) => called.get(person.id))).toEqual(["Ondrell", "Mibsy", "Tavro", "Zed"]);
  });

  test("lists only who is ready, or not yet, in all skills or in one", () => {
    expect(listed(BY_NAME, { show: "ready", skill: "all" })).toEqual(["Ondrell"]);
    expect(listed(BY_NAME, { show: "not-yet", skill: skillKey(OPEN) })).toEqual(["Dorvik", "Mibsy", "Tavro"]);
    const both = classTable([klass], [OPEN, FOUR]);
    expect(orderedRows(both, names, BY_NAME, { show: "ready", skill: "all" })).toEqual([]);
    expect(orderedRows(both, names, BY_NAME, { show: "ready", skill: skillKey(OPEN) })).toHaveLength(1);
  });
});

test("a cell tells openings, the latest attempt, and the best under any setting", () => {
  const attempts = [
    anAttempt("1", { startedAt: NOON, duration_ms: 30_000, help: "full", stops: stopsOf(0.9, 0) }),
    anAttempt("2", { startedAt: NOON + 1, duration_ms: 50_000, stops: stopsOf(-0.2, 0.1) }),
    anAttempt("3", { startedAt: NOON + 2, duration_ms: 20_000, opened: false }),
  ];
  const cell = classTable([contents([aPerson("tavro")], attempts)]).rows[0]?.cells[0];
  if (!cell) throw new Error("the cell is there");
  expect(cellWords(cell)).toEqual({
    openings: "2 of 3 opened",
    latest: expect.stringMatching(/^missed, 20\.0 s, Nov \d+$/),
    best: "30.0 s, worst stop 0.2",
  });
  const missed = classTable([contents([aPerson("tavro")], attempts.slice(2))]).rows[0]?.cells[0];
  expect(missed && cellWords(missed).best).toBe("no opening yet");
  expect([cellState(cell), cellState(null)]).toEqual(["not-yet", "none"]);
});

test("who is ready is told skill by skill, the nearest first among the others, with what is wanted", () => {
  const [open, four] = readyLists(classTable([klass], [OPEN, FOUR]), names);
  expect(open).toEqual({
    ready: ["Ondrell"],
    lapsed: [],
    notYet: [
      { name: "Mibsy", wanted: "8 openings in a row needed" },
      { name: "Dorvik", wanted: "10 openings in a row needed" },
    ],
    none: ["Tavro"],
  });
  expect(four).toMatchObject({ ready: [], notYet: [], none: ["Dorvik", "Mibsy", "Ondrell", "Tavro"] });
  expect(masteryWords(mastery(OPEN, row("Mibsy", "ooooooooooo")))).toBe("1 more opening needed");
  expect(masteryWords(mastery(OPEN, row("Mibsy", "oooooooooooo")))).toBe("since attempt 12");
  expect(masteryWords(mastery(OPEN, row("Mibsy", "oooooooooooo----")))).toBe(
    "too many misses by attempt 16; 12 openings in a row needed",
  );
  const lost = [
    ...klass.records.attempts,
    ...row("Ondrell", "--------").map((one, i) => ({ ...one, id: `late${i}`, startedAt: NOON + 100 + i })),
  ];
  const [now] = readyLists(classTable([{ ...klass, records: { ...klass.records, attempts: lost } }], [OPEN]), names);
  expect(now).toMatchObject({
    ready: [],
    lapsed: [{ name: "Ondrell", wanted: expect.stringMatching(/^too many misses/) }],
  });
});

describe("one person, closely", () => {
  const sitting = (id: string, other: Partial<SittingRecord> = {}): SittingRecord => ({
    id,
    createdAt: NOON,
    updatedAt: NOON,
    personId: "tavro",
    startedAt: NOON,
    title: "Before the first door",
    state: "finished",
    verdict: "passed",
    body: {},
    ...other,
  });
  const attempts = [
    anAttempt("1", { opened: false, faults: [{ code: "ran-past", number: 3, size: 2 }] }),
    anAttempt("2", {
      startedAt: NOON + 1,
      opened: false,
      faults: [
        { code: "ran-past", number: 1, size: 2 },
        { code: "wrong-way", number: 1, size: 2 },
      ],
    }),
    anAttempt("3", { startedAt: NOON + 2, profileId: "four-wheel", faults: [] }),
    anAttempt("4", { personId: "mibsy", faults: [{ code: "not-drawn", number: 1, size: 0 }] }),
  ];
  const base = contents([aPerson("tavro"), aPerson("mibsy")], attempts);
  const all = {
    ...base,
    records: { ...base.records, sittings: [sitting("s1"), sitting("s2", { startedAt: NOON + 9 })] },
  };

  test("has what was missed by kind and number, most frequent first, at all skills or at one", () => {
    const { faults } = personTables(all, "tavro", null);
    expect(faults?.head).toEqual(["fault", "number 1", "number 2", "number 3", "total"]);
    expect(faults?.rows).toEqual([
      ["ran past", "1", "–", "1", "2"],
      ["wrong way", "1", "–", "–", "1"],
    ]);
    expect(personTables(all, "tavro", FOUR).faults).toBeNull();
    expect(personTables(all, "tavro", FOUR).attempts?.rows).toHaveLength(1);
    expect(personTables(all, "nobody", null)).toEqual({
      ...{ faults: null, attempts: null, missed: null, jobs: null, zeroings: null, sittings: [] },
    });
  });

  test("has the jobs, latest first, with what was missed at them, at all skills or at one", () => {
    const jobs = [
      aJob("j1", { isRight: false, missed: ["number-set-off", "locked-out"] }),
      aJob("j2", { startedAt: NOON + 1, isRight: false, missed: ["locked-out"] }),
      aJob("j3", { startedAt: NOON + 2, kind: "handover" }),
    ];
    const none = contents([aPerson("tavro")], []);
    const all = { ...none, records: { ...none.records, jobs } };
    const tables = personTables(all, "tavro", null);
    expect(tables.missed).toMatchObject({
      caption: "What was missed, in 3 jobs",
      rows: [
        ["locked out", "2"],
        ["a number set off", "1"],
      ],
    });
    expect(tables.jobs?.rows.map((row) => row.slice(1))).toEqual([
      ["Handover", "Three-wheel", "", "Right", "nothing missed", "4:00 min"],
      ["Change", "Three-wheel", "silent", "Not right", "locked out", "4:00 min"],
      ["Change", "Three-wheel", "silent", "Not right", "a number set off; locked out", "4:00 min"],
    ]);
    const handover = { profileId: "three-wheel", exercise: "handover" };
    expect(personTables(all, "tavro", handover)).toMatchObject({ missed: null, jobs: { rows: [{}] } });
    const [cell] = classTable([all], [handover]).rows[0]?.cells ?? [];
    if (!cell) throw new Error("the cell is there");
    expect(cellWords(cell)).toMatchObject({
      ...{ openings: "1 of 1 right", best: null, latest: expect.stringMatching(/^right, 4:00 min, /) },
    });
    expect(masteryWords(cell.mastery)).toBe("11 right jobs in a row needed");
    expect([stateWord("none", true), stateWord("none", false)]).toEqual(["No job", "No attempt"]);
  });

  const desk = { appVersion: "0.1.0", traces: new Map(), names: new Map([["tavro", "Tavro"]]), sheets: [] };

  test("has the latest sitting first, and says nothing of one that is not checked yet", async () => {
    const { sittings } = personTables(all, "tavro", null);
    const checks = await sittingChecks([keptSitting("s2", { pauses: 1, interruptions: 2, person: "Tavro" })], desk);
    const { rows } = sittingsTable(sittings, checks);
    expect(rows.map((cells) => cells.slice(1))).toEqual([
      [
        "A sheet",
        expect.stringMatching(/^[0-9A-F-]{9}, not one of your sheets$/),
        "passed",
        "1",
        "2",
        "sound, not all replayed",
      ],
      ["…", "…", "…", "…", "…", "…"],
    ]);
    expect(rows[0]?.[0]).toMatch(/2026/);
  });

  test("tells whether the record of a sitting checks, and has no result where it does not", async () => {
    const named = { person: "Tavro" };
    const good = keptSitting("s1", named);
    const changed = JSON.parse(JSON.stringify(good.body).replace('"seed":7', '"seed":8'));
    const [earlier] = [keptRecord({ ...named, appVersion: "0.0.9" })];
    const other = { ...earlier.record, profileHashes: ["0".repeat(64)] };
    const body = { sha256: recordHash(other), record: other };
    const sittings = [good, { ...good, id: "s2", body: changed }, sitting("s3"), sitting("s4", { state: "running" })];
    const checks = await sittingChecks([...sittings, { ...good, id: "s5", body }], desk);
    expect([...checks].map(([id, { record, result }]) => [id, record, result])).toEqual([
      ["s1", "sound, not all replayed", "passed"],
      ["s2", "fails its check", "none"],
      ["s3", "cannot be read", "none"],
      ["s4", "not ended", "–"],
      ["s5", "of another version", "passed"],
    ]);
  });

  test("names what stands beside a record and says something else", async () => {
    const failed = keptSitting("s1", { person: "Mibsy", tries: triesRight(1, 5) });
    const beside = { verdict: "passed", title: "The hard sheet", startedAt: NOON } as const;
    const check = (await sittingChecks([{ ...failed, ...beside }], desk)).get("s1");
    expect(check).toMatchObject({ title: "A sheet", result: "not passed", record: "differs from its file" });
    expect(check?.startedAt).toBe("2026-11-25T08:00:00.000Z");
    expect(check?.sentences.slice(0, 4)).toEqual([
      "The file says passed (result); its record says failed.",
      "The file says The hard sheet (sheet); its record says A sheet.",
      expect.stringMatching(/^The file says 2026-.*; its record says 2026-11-25T08:00:00\.000Z\.$/),
      "The file says Tavro (person); its record says Mibsy.",
    ]);
  });

  test("says whose sheet it was: an own one, one of the same name with other marks, or neither", async () => {
    const { record } = keptRecord();
    const eased = testSheet({ stations: [dialingStation({ repetitions: 5, passMarks: { firstTime: 1 } })] });
    const sheetWords = async (own: Sheet) =>
      (await sittingChecks([keptSitting("s1")], { ...desk, sheets: [own] })).get("s1")?.sheet.slice(11);
    expect(await sheetWords({ ...record.sheet, title: "My own words" })).toBe("your sheet My own words");
    expect(await sheetWords(eased)).toBe("differs from your sheet A sheet");
    expect(await sheetWords({ ...eased, title: "Another" })).toBe("not one of your sheets");
  });
});
