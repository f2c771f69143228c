import { describe, expect, test } from "vitest";
import { classView, deskSentence, fileSentence, namesOf } from "../../../src/app/desk/classView";
import { ClassDesk } from "../../../src/app/deskFiles/classDesk";
import { LogbookReader, type ReaderWorker } from "../../../src/app/keeping/reader/logbookReader";
import { readAndTell } from "../../../src/app/keeping/reader/readerMessages";
import type { AttemptRecord } from "../../../src/records/attemptRecord";
import { writeLogbookFile } from "../../../src/records/file/logbookFile";
import { fileSentences } from "../../../src/records/fileWords";
import type { LogbookContents } from "../../../src/records/logbookContents";
import { anAttempt, aPerson, contents, NOON } from "../../support/logbookRecords";

/** Reads in the same thread. */
const nearWorker = (): ReaderWorker => {
  const worker: ReaderWorker = {
    onmessage: null,
    onerror: null,
    postMessage: (data: unknown) => {
      const heard = worker.onmessage as ((event: { data: unknown }) => void) | null;
      readAndTell(data as Blob, (message) => heard?.({ data: message }));
    },
    terminate: () => {},
  };
  return worker;
};

const desk = () => new ClassDesk(new LogbookReader(nearWorker));
const file = (name: string, logbook: LogbookContents) => new File([writeLogbookFile(logbook, NOON)], name);
/** An attempt that its short recording bears out. */
const missed = (id: string, other: Partial<AttemptRecord> = {}) =>
  anAttempt(id, { opened: false, duration_ms: 33, ...other });
const tavro = contents([aPerson("tavro")], [missed("a1"), missed("a2")]);
const mibsy = contents([aPerson("mibsy")], [missed("b1", { personId: "mibsy" })]);

describe("the class desk", () => {
  test("takes many files, names a bad one, and keeps the good ones", async () => {
    const one = desk();
    await one.add([file("a.json", tavro), new File(["{"], "bad.json"), file("b.json", mibsy)]);
    expect(one.files.map(({ name }) => name)).toEqual(["a.json", "b.json"]);
    expect(one.problems).toMatchObject([{ name: "bad.json", sentence: expect.stringMatching(/^This file .*\.$/) }]);
    expect(one.reading).toBeNull();
  });

  test("leaves out what its recording does not bear out, and says so beside the file", async () => {
    const one = desk();
    const boasted = contents([aPerson("tavro")], [missed("a1"), missed("a2", { opened: true })]);
    await one.add([file("a.json", boasted)]);
    expect(one.files[0]?.contents.records.attempts.map(({ id }) => id)).toEqual(["a1"]);
    expect(fileSentences(one.files[0]?.leftOut ?? [])).toEqual([
      expect.stringMatching(/^1 attempt of tavro left out: recorded as opened/),
    ]);
  });

  test("takes files that come while it reads, and counts them", async () => {
    const one = desk();
    const places: string[] = [];
    one.subscribe(() => one.reading && places.push(`${one.reading.place} of ${one.reading.files}`));
    const reading = one.add([file("a.json", tavro)]);
    one.add([file("b.json", mibsy)]);
    await reading;
    expect(one.files).toHaveLength(2);
    expect(places).toContain("2 of 2");
  });

  test("stops with what is read already", async () => {
    const one = desk();
    one.subscribe(() => one.reading?.place === 2 && one.stop());
    await one.add([file("a.json", tavro), file("b.json", mibsy), file("c.json", tavro)]);
    expect(one.files.map(({ name }) => name)).toEqual(["a.json"]);
    expect(one.problems).toEqual([]);
    expect(one.reading).toBeNull();
  });

  test("loads the demo once, removes it, and never offers it, or a machine's settings, to the logbook", async () => {
    const one = desk();
    const setting = { id: "theme", createdAt: NOON, updatedAt: NOON, value: "dark" };
    await one.add([file("a.json", { ...tavro, records: { ...tavro.records, settings: [setting] } })]);
    one.loadDemo(NOON);
    one.loadDemo(NOON);
    expect(one.files.map(({ isDemo }) => isDemo)).toEqual([false, true]);
    expect(one.brought).toEqual(tavro);
    one.removeDemo();
    expect(one.hasDemo).toBe(false);
    one.remove(one.files[0]?.key ?? -1);
    expect(one.files).toEqual([]);
  });
});

describe("what lies on the desk", () => {
  const lying = (...all: (readonly [string, LogbookContents])[]) =>
    all.map(([name, logbook], key) => ({ key, name, contents: logbook, isDemo: false, leftOut: [] }));

  test("counts a record once that came twice, and says so", () => {
    const files = lying(["a.json", tavro], ["a again.json", tavro], ["b.json", mibsy]);
    const view = classView(files);
    expect(view.contents.records.attempts).toHaveLength(3);
    expect(view.repeated).toBe(3);
    expect(deskSentence(view, 3)).toBe(
      "3 logbooks: 2 trainees, 3 attempts, 0 sittings. 3 records came in more than one file. Each counts once; the newer one counts.",
    );
  });

  test("is told apart where two have one name: by the file, else by a number", () => {
    const trainee = (id: string) => aPerson(id, { name: "Trainee" });
    const files = lying(
      ["left.json", contents([trainee("1")])],
      ["right.json", contents([trainee("2"), trainee("3"), aPerson("tavro")])],
    );
    const people = files.flatMap((one) => one.contents.records.people);
    expect([...namesOf(people, files).values()]).toEqual([
      "Trainee (left)",
      "Trainee (right)",
      "Trainee (right) 2",
      "tavro",
    ]);
  });

  test("is listed by people and attempts", () => {
    expect(fileSentence({ contents: tavro })).toBe("tavro; 1 person, 2 attempts");
    const many = contents(["a", "b", "c", "d", "e"].map((id) => aPerson(id)));
    expect(fileSentence({ contents: many })).toBe("a, b, c and 2 more; 5 people, 0 attempts");
    expect(fileSentence({ contents: contents([]) })).toBe("no one; 0 people, 0 attempts");
  });
});
