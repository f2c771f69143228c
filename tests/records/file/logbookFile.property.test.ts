import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { AttemptRecord } from "../../../src/records/attemptRecord";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { FileError } from "../../../src/records/fileWords";
import { type LogbookContents, NO_CONTENTS } from "../../../src/records/logbookContents";
import { LogbookError } from "../../../src/records/logbookError";
import type { Logbook } from "../../../src/store/logbook";
import { mergeIntoLogbook, wholeLogbook } from "../../../src/store/wholeLogbook";
import { aJob, anAttempt, attempts, contents, NOON, openLogbook, theirPeople } from "../../support/logbookRecords";

const written = (part: LogbookContents) => writeLogbookFile(part, NOON);
const byId = (list: readonly AttemptRecord[]) => list.toSorted((a, b) => (a.id < b.id ? -1 : 1));

async function holding(part: LogbookContents): Promise<Logbook> {
  const logbook = await openLogbook();
  await mergeIntoLogbook(logbook, part);
  return logbook;
}

/** A logbook with a record of every kind. */
const FULL: LogbookContents = {
  ...contents(theirPeople, [anAttempt("a1", { note: "über", estimate: 0.5, ownProfile: { id: "mine" } })]),
  records: {
    ...contents(theirPeople, [anAttempt("a1", { note: "über", estimate: 0.5, ownProfile: { id: "mine" } })]).records,
    zeroings: [
      {
        id: "z1",
        createdAt: NOON,
        updatedAt: NOON,
        personId: "tavro",
        startedAt: NOON,
        profileId: "dial-encoder",
        outcome: "zero-set",
        readings: [{ turn: "left", deviation: -0.12, refusal: "came-back" }],
        details: { rules: { wanted: 3 } },
      },
    ],
    jobs: [
      aJob("j1", { isRight: false, missed: ["number-set-off"], note: "ß", details: { steps: [1, { two: null }] } }),
    ],
    sittings: [
      {
        id: "s1",
        createdAt: NOON,
        updatedAt: NOON,
        personId: "mibsy",
        startedAt: NOON,
        title: "Friday",
        state: "finished",
        verdict: "passed",
        body: [1, { two: null }],
      },
    ],
    sheets: [{ id: "h1", createdAt: NOON, updatedAt: NOON, title: "Past it", body: {} }],
    settings: [{ id: "theme", createdAt: NOON, updatedAt: NOON, value: "dark" }],
    declarations: [
      {
        id: "d1",
        createdAt: NOON,
        updatedAt: NOON,
        personId: "tavro",
        profileId: "three-wheel",
        exercise: "open",
        declaredAt: NOON,
        attempts: 12,
      },
    ],
  },
};

describe("a logbook file", () => {
  test("gives back every kind of record, and the traces", () => {
    expect(readLogbookFile(written(FULL))).toEqual({ ...FULL, remarks: [] });
  });

  test("without jobs is one that an earlier trainer reads, and with them one that it refuses", () => {
    const bare = { ...FULL, records: { ...FULL.records, jobs: [] } };
    expect(JSON.parse(written(bare))).toMatchObject({ version: 1, jobs: [] });
    expect(JSON.parse(written(FULL))).toMatchObject({ version: 2 });
    // As version 1 was written: with no list of jobs at all.
    const { jobs: _, ...old } = JSON.parse(written(bare));
    expect(readLogbookFile(JSON.stringify(old))).toEqual({ ...bare, remarks: [] });
  });

  test("gives back any attempts, from any logbook to any other", async () => {
    await fc.assert(
      fc.asyncProperty(attempts, async (some) => {
        const from = await holding(contents(theirPeople, some));
        const to = await holding(readLogbookFile(written(await wholeLogbook(from))));
        const there = await wholeLogbook(to);
        expect(byId(there.records.attempts)).toEqual(byId(some));
        expect(there.traces.size).toBe(some.length);
      }),
      { numRuns: 25 },
    );
  });

  test("read twice changes nothing the second time", async () => {
    const logbook = await holding(FULL);
    const before = await wholeLogbook(logbook);
    expect(await mergeIntoLogbook(logbook, readLogbookFile(written(FULL)))).toEqual({ added: 0, updated: 0, kept: 10 });
    expect(await wholeLogbook(logbook)).toEqual(before);
  });

  test("never takes the place of a later record, and always that of an earlier one", async () => {
    const age = fc.integer({ min: -2, max: 2 });
    await fc.assert(
      fc.asyncProperty(age, age, async (here, there) => {
        const aged = (note: string, by: number) =>
          contents(theirPeople, [anAttempt("a", { note, updatedAt: NOON + by })]);
        const logbook = await holding(aged("here", here));
        await mergeIntoLogbook(logbook, readLogbookFile(written(aged("there", there))));
        const [found] = (await wholeLogbook(logbook)).records.attempts;
        expect(found?.note).toBe(there > here ? "there" : "here");
      }),
    );
  });
});

describe("a file that is no logbook", () => {
  const file = (other: object) => JSON.stringify({ ...JSON.parse(written(FULL)), ...other });
  test.each([
    ["nothing", "", "not one whole JSON value"],
    ["half a file", written(FULL).slice(0, 200), "not one whole JSON value"],
    ["another format", file({ format: "drill-sheet" }), 'its "format" is not'],
    ["null", "null", 'its "format" is not'],
    ["a later version", file({ version: 7 }), "version 7"],
    ["no version", file({ version: "one" }), '"version" must be 1 to 2'],
    ["version nought", file({ version: 0 }), '"version" must be 1 to 2'],
  ])("%s is refused with a sentence", (_why, text, words) => {
    expect(() => readLogbookFile(text)).toThrow(FileError);
    expect(() => readLogbookFile(text)).toThrow(words);
  });

  /** Reads text into a logbook as the app does, and tells whether it was taken. */
  const offer = async (logbook: Logbook, text: string): Promise<boolean> => {
    let read: LogbookContents;
    try {
      read = readLogbookFile(text);
    } catch (error) {
      expect(error).toBeInstanceOf(FileError);
      expect(error).toMatchObject({ message: expect.stringMatching(/^[A-Z"a-z].*\.$/s) });
      return false;
    }
    await mergeIntoLogbook(logbook, read);
    return true;
  };

  const base = written(FULL);
  const anyText = fc.oneof(
    fc.string(),
    fc.json(),
    // A true file with one place changed, cut, or doubled.
    fc
      .tuple(fc.nat(base.length), fc.nat(40), fc.string({ maxLength: 5 }))
      .map(([at, cut, put]) => base.slice(0, at) + put + base.slice(at + cut)),
    // A true file with any JSON in one of its fields.
    fc
      .tuple(fc.constantFrom(...Object.keys(JSON.parse(base))), fc.jsonValue())
      .map(([key, value]) => file({ [key]: value })),
    // A true attempt with any JSON in one of its fields.
    fc
      .tuple(fc.constantFrom(...Object.keys(anAttempt("a")), "trace", "__proto__", "note"), fc.jsonValue())
      .map(([key, value]) =>
        file({ attempts: [Object.fromEntries([...Object.entries(anAttempt("a9")), [key, value]])] }),
      ),
  );

  test("whatever it is, is taken or refused with a sentence, and a refusal changes nothing", {
    timeout: 60_000,
  }, async () => {
    const logbook = await holding(FULL);
    let last = await wholeLogbook(logbook);
    await fc.assert(
      fc.asyncProperty(anyText, async (text) => {
        const isTaken = await offer(logbook, text);
        const now = await wholeLogbook(logbook);
        if (!isTaken) expect(now).toEqual(last);
        for (const { id } of last.records.attempts) expect(now.traces.has(id)).toBe(last.traces.has(id));
        expect(now.records.attempts.length).toBeGreaterThanOrEqual(last.records.attempts.length);
        last = now;
      }),
      { numRuns: 400 },
    );
  });
});

describe("an import that fails in the middle", () => {
  test("leaves the logbook as it was", async () => {
    const logbook = await holding(FULL);
    const before = await wholeLogbook(logbook);
    // Declarations come last, so that everything else is already put in when there is no more room.
    logbook.database?.declarations.hook("creating", () => {
      throw new DOMException("The quota has been exceeded.", "QuotaExceededError");
    });
    const more = contents(theirPeople, [anAttempt("a2"), anAttempt("a1", { updatedAt: NOON + 5, note: "changed" })]);
    const declarations = FULL.records.declarations.map((one) => ({ ...one, id: "d2" }));
    const refused = mergeIntoLogbook(logbook, { ...more, records: { ...more.records, declarations } });
    await expect(refused).rejects.toMatchObject({ code: "quota-full" });
    expect(await wholeLogbook(logbook)).toEqual(before);
  });

  test("where nothing is kept, says so", async () => {
    const logbook = await openLogbook();
    logbook.close();
    await expect(mergeIntoLogbook(logbook, NO_CONTENTS)).rejects.toBeInstanceOf(LogbookError);
  });
});
