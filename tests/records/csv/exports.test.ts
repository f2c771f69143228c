import { csvParse } from "d3-dsv";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { harmlessText } from "../../../src/lock/harmlessText";
import { classTable } from "../../../src/progress/classTable";
import { classCsv } from "../../../src/progress/csv/classCsv";
import { CSV_FILES, csvDictionary } from "../../../src/progress/csv/csvDictionary";
import { demoLogbook } from "../../../src/progress/demo/demoLogbook";
import { attemptsCsv } from "../../../src/records/csv/attemptsCsv";
import { attemptsReplay } from "../../../src/records/csv/attemptsReplay";
import { csvText } from "../../../src/records/csv/csvText";
import { jobsCsv } from "../../../src/records/csv/jobsCsv";
import { sittingsCsv } from "../../../src/records/csv/sittingsCsv";
import { zeroingsCsv } from "../../../src/records/csv/zeroingsCsv";
import { parseAttemptLine } from "../../../src/trace/recordedAttempt";
import { replay, resultOf } from "../../../src/trace/replay";
import { keptSitting } from "../../support/keptRecord";
import { aJob, anAttempt, aPerson, attempts, contents, NOON, stopsOf, theirPeople } from "../../support/logbookRecords";
import { triesRight } from "../../support/testTries";

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
      turned_by: "screen",
      turns_in_doubt: "",
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
      ...{ outcome: "zero-set" as const, readings, isLate: true, details: { sittingId: "s" } },
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
      late: "1",
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

describe("sittings as CSV", () => {
  test("say what the checked record says, whatever stands beside it", async () => {
    const honest = keptSitting("s1");
    const failed = keptSitting("s2", { tries: triesRight(1, 5) });
    const forged = { ...failed, verdict: "passed" as const, title: "Another sheet" };
    const damaged = { ...honest, id: "s3", startedAt: honest.startedAt + 1, body: { record: 1 } };
    const part = contents([aPerson("tavro")]);
    const book = { ...part, records: { ...part.records, sittings: [damaged, forged, honest] } };
    const rows = csvParse(sittingsCsv(book, "0.1.0"));
    const row = (id: string) => rows.find((one) => one.id === id);
    expect(rows).toHaveLength(3);
    expect(row("s1")).toMatchObject({ result: "passed", tries: "5", pauses: "0", reloads: "0", worked_s: "180" });
    expect(row("s1")?.sheet_fingerprint).toMatch(/^[0-9A-F]{4}-[0-9A-F]{4}$/);
    expect(row("s2")?.result).toBe("failed");
    expect(row("s2")?.sheet).not.toBe("Another sheet");
    expect(row("s2")?.record).toMatch(/The file says passed/);
    expect(row("s3")).toMatchObject({ result: "none", sheet: "", record: expect.stringMatching(/^cannot be read: /) });
    expect(
      csvParse(csvDictionary())
        .filter(({ file }) => file === "sittings")
        .map(({ column }) => column),
    ).toEqual(rows.columns);
  });
});
