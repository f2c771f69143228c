import { csvParse } from "d3-dsv";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { harmlessText } from "../../src/drill/harmlessText";
import { attemptsCsv } from "../../src/logbook/attemptsCsv";
import { attemptsReplay } from "../../src/logbook/attemptsReplay";
import { classCsv } from "../../src/logbook/classCsv";
import { classTable } from "../../src/logbook/classTable";
import { CSV_FILES, csvDictionary } from "../../src/logbook/csvDictionary";
import { csvText } from "../../src/logbook/csvText";
import { demoLogbook } from "../../src/logbook/demoLogbook";
import { jobsCsv } from "../../src/logbook/jobsCsv";
import { type LogbookContents, NO_CONTENTS } from "../../src/logbook/logbookContents";
import { xapiStatements } from "../../src/logbook/xapiStatements";
import { zeroingsCsv } from "../../src/logbook/zeroingsCsv";
import { parseAttemptLine } from "../../src/trace/recordedAttempt";
import { replay, resultOf } from "../../src/trace/replay";
import { keptSitting } from "../support/keptRecord";
import { aJob, anAttempt, aPerson, attempts, contents, NOON, stopsOf, theirPeople } from "../support/logbookRecords";
import { dialingStation, testSheet } from "../support/testSheet";
import { triesRight } from "../support/testTries";

const demo = demoLogbook(3, NOON);

describe("CSV", () => {
  /** What a spreadsheet might take for the beginning of a formula, wherever it may take a cell to begin. */
  const STARTS = /(^|[;\t\r\n])[\s"'\u200b\ufeff]*[=+\-@＝＋－＠]/;

  function expectGuarded(was: string, is: string) {
    const shown = harmlessText(was);
    // Guards are apostrophes, and nothing else is added, taken or moved.
    expect(is.replaceAll("'", "")).toBe(shown.replaceAll("'", ""));
    if (!STARTS.test(shown) && !/^[\t\r\n]/.test(shown)) expect(is).toBe(shown);
    expect(is).not.toMatch(/^[\t\r\n]/);
    expect(is.split(/[;\t\r\n]/).filter((part) => /^[\s"\u200b\ufeff]*[=+\-@＝＋－＠]/.test(part))).toEqual([]);
  }

  test("gives back any text, but for guards where a spreadsheet might see a formula", () => {
    const text = fc.oneof(fc.string(), fc.string({ unit: fc.constantFrom(..."=+-@＝＋－＠ ;\t\r\n\"'a1") }));
    fc.assert(
      fc.property(text, text, (one, other) => {
        const [row] = csvParse(csvText(["one", "other"], [[one, other]]));
        expectGuarded(one, row?.one ?? "");
        expectGuarded(other, row?.other ?? "");
      }),
      {
        numRuns: 500,
        examples: [
          ["=HYPERLINK(1)", "-2+3"],
          ["@x", '"\n,'],
          ["\tx", "+1"],
        ],
      },
    );
  });

  test.each([
    [" =1+1", "' =1+1"],
    ["＝1+1", "'＝1+1"],
    ["＠SUM(A1)", "'＠SUM(A1)"],
    ["fine; =1+1", "fine;' =1+1"],
    ["fine;=1+1;-2", "fine;'=1+1;'-2"],
    ['a\n"=1', "a\n'\"=1"],
    ["\u202Egpj", "\uFFFDgpj"],
    ["29-92-54", "29-92-54"],
    ["cold hands; late", "cold hands; late"],
  ])("writes %j so that it stays a text", (typed, written) => {
    expect(csvParse(csvText(["a"], [[typed]]))[0]?.a).toBe(written);
  });

  test("keeps a negative number a number", () => {
    expect(csvText(["a"], [[-0.5], [null]])).toBe("a\n-0.5\n\n");
  });

  test("has an attempt a row, with stop errors in columns", () => {
    const faults = [{ code: "ran-past" as const, number: 2, size: 1.7512 }];
    const attempt = anAttempt("a", { opened: false, faults, stops: stopsOf(-0.5, 1.7512), note: "=1+1" });
    const [row] = csvParse(attemptsCsv(contents([aPerson("tavro", { name: "=Tavro" })], [attempt])));
    expect(row).toMatchObject({
      person: "'=Tavro",
      person_id: "tavro",
      sitting_id: "",
      sheet: "",
      started: new Date(NOON).toISOString(),
      combination: "29-92-54",
      opened: "0",
      duration_s: "40",
      faults: "ran-past 2 (1.75)",
      stop_error_1: "-0.5",
      stop_error_2: "1.751",
      stop_error_3: "",
      note: "'=1+1",
    });
  });
});

describe("jobs as CSV", () => {
  test("have a job a row, what was missed in one cell", () => {
    const job = aJob("j", { kind: "handover", isRight: false, missed: ["way-out", "record"], note: "=1+1" });
    const part = contents([aPerson("tavro", { name: "Tavro" })]);
    const [row, more] = csvParse(jobsCsv({ ...part, records: { ...part.records, jobs: [job] } }));
    expect(more).toBeUndefined();
    expect(row).toEqual({
      id: "j",
      started: new Date(NOON).toISOString(),
      person: "Tavro",
      person_id: "tavro",
      sitting_id: "",
      sheet_id: "",
      sheet: "",
      profile: "three-wheel",
      job: "handover",
      help: "silent",
      right: "0",
      duration_s: "240",
      missed: "way-out; record",
      tags: "",
      note: "'=1+1",
    });
  });
});

describe("zeroings as CSV", () => {
  test("have a zeroing a row, with the means of each turn, every stop, and the sitting it was a try of", () => {
    const readings = [
      { turn: "right" as const, deviation: 0.2 },
      { turn: "right" as const, deviation: 0.4 },
      { turn: "right" as const, deviation: 3, refusal: "off-the-mark" as const },
      { turn: "left" as const, deviation: -0.1 },
    ];
    const zeroing = {
      ...{ id: "z", createdAt: NOON, updatedAt: NOON, personId: "tavro", startedAt: NOON, profileId: "dial-encoder" },
      ...{ outcome: "zero-set" as const, readings, details: { sittingId: "s" } },
    };
    const sitting = { ...anAttempt("s"), title: "Friday", state: "finished" as const, body: {} };
    const part = contents([aPerson("tavro")]);
    const [row] = csvParse(
      zeroingsCsv({ ...part, records: { ...part.records, zeroings: [zeroing], sittings: [sitting] } }),
    );
    expect(row).toMatchObject({
      id: "z",
      person_id: "tavro",
      sitting_id: "s",
      sheet: "Friday",
      outcome: "zero-set",
      right_stops: "2",
      right_mean: "0.3",
      right_spread: "0.2",
      left_stops: "1",
      left_mean: "-0.1",
      left_spread: "0",
      refused: "1",
      stops: "right 0.2; right 0.4; right 3 (refused: off-the-mark); left -0.1",
    });
  });
});

describe("every CSV", () => {
  test("has its rows in one order, whatever order the records come in", () => {
    fc.assert(
      fc.property(attempts, fc.infiniteStream(fc.nat()), (list, keys) => {
        const shuffled = list
          .map((one) => ({ one, key: keys.next().value ?? 0 }))
          .sort((a, b) => a.key - b.key)
          .map(({ one }) => one);
        expect(attemptsCsv(contents(theirPeople, shuffled))).toBe(attemptsCsv(contents(theirPeople, list)));
      }),
    );
  });

  test("has every column explained, with a unit where the name or the meaning has one", () => {
    const explained = csvParse(csvDictionary());
    const columnsOf = (file: string) => explained.filter((one) => one.file === file).map(({ column }) => column);
    expect(columnsOf("attempts")).toEqual(csvParse(attemptsCsv(demo)).columns);
    expect(columnsOf("jobs")).toEqual(csvParse(jobsCsv(demo)).columns);
    expect(columnsOf("zeroings")).toEqual(csvParse(zeroingsCsv(demo)).columns);
    expect(columnsOf("class")).toEqual(csvParse(classCsv(classTable([demo]))).columns);
    for (const { column, unit, meaning } of explained) {
      expect(meaning, column).toMatch(/^[a-z0-9].{8,}[^.]$/);
      if (column?.endsWith("_s")) expect(unit, column).toBe("s");
      if (/^(stop_|estimate)/.test(column ?? "")) expect(unit, column).toBe("graduations");
    }
    expect(CSV_FILES.map(({ file }) => file)).toContain("gauge");
  });
});

describe("the replay format", () => {
  test("replays to the same outcome, through the reader of the command line", { timeout: 60_000 }, () => {
    const { text, leftOut } = attemptsReplay(demo);
    const lines = text.trimEnd().split("\n");
    expect(leftOut).toBe(0);
    expect(lines).toHaveLength(demo.records.attempts.length);
    const byId = new Map(demo.records.attempts.map((one) => [one.id, one]));
    const names = new Map(demo.records.people.map(({ id, name }) => [id, name]));
    lines.forEach((line) => {
      const { opened, faults } = resultOf(replay(parseAttemptLine(line)));
      const { id, person, personId, startedAt } = JSON.parse(line);
      const attempt = byId.get(id);
      expect(startedAt).toBe(new Date(attempt?.startedAt ?? 0).toISOString());
      expect([personId, person]).toEqual([attempt?.personId, names.get(personId)]);
      expect(opened).toBe(attempt?.opened);
      expect(faults.map(({ code }) => code)).toEqual(attempt?.faults.map(({ code }) => code));
    });
  });

  test("leaves out what cannot be replayed, and says how much", () => {
    const odd = [anAttempt("a", { profileId: "of-another-school" }), anAttempt("b")];
    const part = contents([aPerson("tavro")], odd);
    expect(attemptsReplay({ ...part, traces: new Map([...part.traces].slice(0, 1)) })).toEqual({
      text: "",
      leftOut: 2,
    });
  });
});

const VERSION = "0.1.0";
const statementsOf = (book: LogbookContents) => xapiStatements(book, VERSION);
const noMarks = testSheet({ stations: [dialingStation({ repetitions: 5 })] });
const ended = [
  await keptSitting("s1"),
  await keptSitting("s2", { tries: triesRight(1, 5) }),
  await keptSitting("s3", { sheet: noMarks }),
  await keptSitting("s5", { ended: "broken-off", tries: triesRight(2, 2) }),
];
const failedOne = await keptSitting("s7", { tries: triesRight(2, 5) });
const forged = [
  // What is stored beside the record says "passed"; the record says otherwise.
  { ...failedOne, verdict: "passed" as const },
  // The record itself was changed under its old hash.
  {
    ...failedOne,
    id: "s8",
    body: JSON.parse(JSON.stringify(failedOne.body).replaceAll('"opened":false', '"opened":true')),
  },
];

describe("xAPI statements", () => {
  const stamp = { createdAt: NOON, updatedAt: NOON + 1000, personId: "tavro" };
  const zeroing = { ...stamp, id: "z", startedAt: NOON, profileId: "dial-encoder", readings: [] };
  const sitting = { ...stamp, startedAt: NOON, title: "Friday", body: {} };
  const uuid = "11111111-2222-4333-8444-555555555555";
  const statements = statementsOf({
    records: {
      ...NO_CONTENTS.records,
      people: [aPerson("tavro", { name: "Tavro" })],
      attempts: [anAttempt(uuid, { duration_ms: 41_236, opened: false })],
      zeroings: [
        { ...zeroing, outcome: "zero-set" },
        { ...zeroing, id: "z2", outcome: "broken-off" },
      ],
      jobs: [aJob("j", { kind: "trouble", isRight: false, missed: ["size"] })],
      sittings: [
        ...ended,
        { ...sitting, id: "s4", state: "running" },
        // Nothing is stated of what no record stands behind.
        { ...sitting, id: "s6", state: "finished", verdict: "passed" },
        ...forged,
      ],
      declarations: [{ ...stamp, id: "d", profileId: "three-wheel", exercise: "open", declaredAt: NOON, attempts: 12 }],
    },
    traces: new Map(),
  });
  const word = (verb: { readonly id: string }) => verb.id.split("/").at(-1);

  test("have ADL's verbs where one fits, and ours under an example domain", () => {
    expect(statements.map(({ verb }) => word(verb)).sort()).toEqual(
      [
        "attempted",
        "attempted",
        "completed",
        "failed",
        "failed",
        "mastered",
        "passed",
        "terminated",
        "terminated",
        "zeroed",
      ].sort(),
    );
    for (const { verb } of statements) {
      expect(verb.id).toMatch(/^(http:\/\/adlnet\.gov\/expapi|https:\/\/gatefall\.example\/xapi)\/verbs\/[a-z]+$/);
    }
  });

  test("say of an attempt who, what, when, and how it went", () => {
    expect(statements.find(({ id }) => id === uuid)).toEqual({
      id: uuid,
      actor: {
        objectType: "Agent",
        name: "Tavro",
        account: { homePage: "https://gatefall.example/local", name: "tavro" },
      },
      verb: { id: "http://adlnet.gov/expapi/verbs/attempted", display: { "en-US": "attempted" } },
      object: {
        objectType: "Activity",
        id: "https://gatefall.example/xapi/activities/three-wheel/open",
        definition: { type: "http://adlnet.gov/expapi/activities/simulation", name: { "en-US": "open, three-wheel" } },
      },
      result: {
        success: false,
        completion: true,
        duration: "PT41.24S",
        extensions: {
          "https://gatefall.example/xapi/extensions/stop-errors": [0.25, -0.5, 0],
          "https://gatefall.example/xapi/extensions/faults": [],
          "https://gatefall.example/xapi/extensions/help": "silent",
          "https://gatefall.example/xapi/extensions/conditions": [],
        },
      },
      context: { platform: "Gatefall", language: "en-US" },
      timestamp: new Date(NOON + 41_236).toISOString(),
    });
  });

  test("say of a job whether it was right, and what was missed", () => {
    const job = statements.find(({ object }) => JSON.stringify(object).includes("three-wheel/trouble"));
    expect(job).toMatchObject({
      result: {
        success: false,
        completion: true,
        duration: "PT240S",
        extensions: { "https://gatefall.example/xapi/extensions/missed": ["size"] },
      },
      timestamp: new Date(NOON + 240_000).toISOString(),
    });
  });

  test("claim no id that is no uuid, and no success where none is shown", () => {
    const others = statements.filter(({ id }) => id !== uuid);
    expect(others.every((one) => !("id" in one))).toBe(true);
    const open = statements.find(({ verb }) => word(verb) === "completed");
    expect(open?.result).toEqual({ completion: true });
  });

  test("of a whole logbook are in order of time", () => {
    const times = statementsOf(demo).map(({ timestamp }) => timestamp);
    expect(times).toEqual(times.toSorted());
    expect(times.length).toBeGreaterThan(demo.records.attempts.length);
  });
});
