import { describe, expect, test } from "vitest";
import { sittingWrite } from "../../../../src/app/sittings/session/sittingLogbook";
import { sha256Hex } from "../../../../src/drill/sha256";
import { parsedJson, writeHashed } from "../../../../src/records/hashedRecord";
import { readSittingRecord } from "../../../../src/records/sitting/readSittingRecord";
import { sittingShown } from "../../../../src/records/sitting/sittingShown";
import { checkWrite } from "../../../../src/store/logbookWrite";
import { keptRecord, sha256 } from "../../../support/keptRecord";
import { memoryShelf } from "../../../support/memoryShelf";

describe("a record as a file", () => {
  test("is hashed by the browser as by anyone", () => {
    expect(sha256Hex("Grüße")).toBe(sha256("Grüße"));
  });

  test("checks as it was saved", async () => {
    const text = writeHashed(keptRecord());
    expect(sittingShown(parsedJson(text), "0.1.0").check.problems).toEqual([]);
    expect(readSittingRecord(parsedJson(text)).sha256).toMatch(/^[0-9a-f]{64}$/);
  });

  test("does not check once a try was changed", async () => {
    const text = writeHashed(keptRecord()).replace('"opened": false', '"opened": true');
    const { isUnchanged, isMarkedRight } = sittingShown(parsedJson(text), "0.1.0").check;
    expect({ isUnchanged, isMarkedRight }).toEqual({ isUnchanged: false, isMarkedRight: false });
  });

  test.each([
    ["", "not the JSON of a saved sitting"],
    ["7", "not the JSON of a saved sitting"],
    ["{}", "this file holds no sitting"],
    ['{"record":{"format":"gatefall-sitting","version":1}}', "without its SHA-256"],
    ['{"sha256":"a","record":{"format":"gatefall-sitting","version":1}}', 'record.notice must be "Practice result'],
  ])("%s is refused with a sentence", (text, problem) => {
    expect(() => sittingShown(parsedJson(text), "0.1.0")).toThrow(problem);
  });

  test("that lost a part is refused with a sentence", async () => {
    const { record, ...rest } = keptRecord();
    const text = JSON.stringify({ ...rest, record: { ...record, tries: [null] } });
    expect(() => sittingShown(parsedJson(text), "0.1.0")).toThrow(
      "record.tries[0] must have a kind that this trainer knows",
    );
  });

  test("is what the logbook takes", async () => {
    const write = sittingWrite(keptRecord(), "person-1", 1_800_000_000_000);
    expect(() => checkWrite(write)).not.toThrow();
    expect(write.record).toMatchObject({ state: "finished", verdict: "passed", title: "A sheet" });
  });
});

describe("a shelf", () => {
  test("keeps a record once, the newest first", async () => {
    const shelf = memoryShelf();
    const one = keptRecord();
    shelf.keepRecord(one);
    shelf.keepRecord({ ...one, id: "two" });
    shelf.keepRecord(one);
    expect(shelf.records.map(({ id }) => id)).toEqual(["one", "two"]);
  });

  test("reads nothing from what is no JSON", () => {
    const shelf = memoryShelf(
      new Map([
        ["gatefall.sittings", "{"],
        ["gatefall.answers", "7"],
        ["gatefall.sitting", '{"format":"gatefall-sitting-progress","version":1}'],
        ["gatefall.sitting.motion.0", "?"],
      ]),
    );
    expect([shelf.records, shelf.answers, shelf.progress, shelf.motion(0)]).toEqual([[], [], null, null]);
  });
});
