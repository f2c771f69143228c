import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import clean from "../../../shared/handovers/clean.json" with { type: "json" };
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { DrillError } from "../../../src/drill/drillError";
import { RunError } from "../../../src/handover/run/rules/runError";
import { drawScene } from "../../../src/handover/run/scene";
import { checkHandoverRecord } from "../../../src/records/handover/checkHandoverRecord";
import { handoverSentences } from "../../../src/records/handover/handoverCheckWords";
import { parseHandoverRecord } from "../../../src/records/handover/handoverRecord";
import { recordHash, writeHashed } from "../../../src/records/hashedRecord";
import { seededChance } from "../../../src/statistics/chance";
import { savedHandoverRecord } from "../../support/savedHandoverRecord";

const sha256 = (text: string) => createHash("sha256").update(text).digest("hex");
const RECORD = savedHandoverRecord();

/** Checks a record under a hash that was made for it, whatever it says. */
const hashedAnew = (record: object) => checkHandoverRecord({ sha256: sha256(canonicalJson(record)), record });

describe("a handover record", () => {
  test("checks as it was saved, its hash typed in capitals", async () => {
    const hash = recordHash(RECORD);
    const file = JSON.parse(writeHashed({ sha256: ` ${hash.toUpperCase()} `, record: RECORD }));
    expect(checkHandoverRecord(file)).toMatchObject({ record: RECORD, isUnchanged: true, problems: [] });
  });

  test("is held to the door that its seed draws, where it promises one", () => {
    const drawn = drawScene(seededChance(RECORD.seed)).height_in;
    const promised = { ...RECORD, drawnBy: 1, height_in: drawn };
    expect(hashedAnew(promised)).toMatchObject({ problems: [], unheld: [] });
    const forged = hashedAnew({ ...promised, height_in: drawn + 1 });
    expect(handoverSentences(forged.problems)).toEqual([
      `The height is ${drawn + 1} inches, but the door that seed 5 draws has ${drawn} inches.`,
    ]);
    expect(hashedAnew({ ...RECORD, height_in: drawn })).toMatchObject({ problems: [], unheld: [] });
    const before = hashedAnew({ ...RECORD, height_in: drawn + 1 });
    expect(before.problems).toEqual([]);
    expect(handoverSentences(before.unheld)[0]).toContain("nothing shows that the door was not chosen");
  });

  test.each<[string, object]>([
    ["another technician", { technician: "X. Pelline" }],
    ["a fault less", { faults: 0, undoneFaults: 0, duration_ms: 1 }],
    ["a field more", { combination: "38-71-26" }],
  ])("%s under the old hash: it was changed", async (_, more) => {
    const file = { sha256: recordHash(RECORD), record: { ...RECORD, ...more } };
    const { isUnchanged, problems } = checkHandoverRecord(file);
    expect(isUnchanged).toBe(false);
    expect(handoverSentences(problems)[0]).toBe(
      "The record is not the one that the hash was made from: it or the hash was changed.",
    );
  });

  test.each<[string, object, RegExp]>([
    [
      "a later change",
      { nextChangeDue: "2030-01-01" },
      /due on 2030-01-01 by the record, but on 2027-11-26 by its date/,
    ],
    ["a proof left out", { proofs: RECORD.proofs.slice(1) }, /list of proofs is not the one/],
    ["more undone than made", { faults: 1, undoneFaults: 2 }, /Faults on record: 1, of which undone: 2/],
    ["half a fault", { faults: 0.5 }, /These numbers cannot be right/],
    ["no height", { height_in: 0, authorizedBy: "E. Quill" }, /height is 0 inches/],
    ["a height out of range that nobody authorized", { height_in: 52 }, /"Exception confirmed by" is empty/],
    ["time that runs backward", { duration_ms: -1 }, /duration is -1/],
    ["a lock that is none", { profileId: "none" }, /This version does not have the lock "none"/],
    ["another notice", { notice: "A certificate." }, /not as this version writes it/],
    ["a rule left out", { changeWhen: [] }, /not as this version writes it/],
    ["no technician", { technician: " " }, /"Technician" is empty/],
    ["a field more", { combination: "38-71-26" }, /has fields that no handover record has: "combination"/],
    [
      "a field more inside another",
      { zero: { right: 0, left: 0, set: 38 } },
      /has\. They are inside one of its other fields/,
    ],
  ])("%s under a hash made anew: it does not fit together", async (_, more, words) => {
    const { isUnchanged, problems } = hashedAnew({ ...RECORD, ...more });
    expect(isUnchanged).toBe(true);
    expect(handoverSentences(problems)).toEqual([expect.stringMatching(words)]);
  });

  test.each<[string, unknown, RegExp]>([
    ["no JSON", null, /^this is not a record: it is not the JSON of a saved handover record$/],
    ["a run", clean, /^this file holds no handover record$/],
    [
      "a sitting",
      { sha256: "a", record: { format: "gatefall-sitting", version: 1 } },
      /^this file holds no handover record: it is the record of a sitting, which is checked under Sittings$/,
    ],
    ["no hash", { record: RECORD }, /^this record comes without its SHA-256$/],
  ])("%s is refused with a sentence", async (_, value, words) => {
    expect(() => checkHandoverRecord(value)).toThrow(DrillError);
    expect(() => checkHandoverRecord(value)).toThrow(words);
  });

  test("that lost a field is refused with its name", async () => {
    const { door: _, ...rest } = RECORD;
    expect(() => hashedAnew(rest)).toThrow(RunError);
    expect(() => hashedAnew(rest)).toThrow("record: door must be a text (it is missing)");
    expect(parseHandoverRecord(RECORD)).toEqual(RECORD);
  });
});

describe("from outside", () => {
  const from020 = () => JSON.parse(readFileSync("tests/fixtures/0.2.0/handover.json", "utf8"));
  const hashOf = (text: string) => createHash("sha256").update(text).digest("hex");

  test("a record of version 0.2.0 still opens and checks", async () => {
    expect(checkHandoverRecord(from020())).toMatchObject({ isUnchanged: true, problems: [] });
  });

  test.each<[string, object, RegExp]>([
    ["a changed notice", { notice: "Certificate." }, /^Its notice/],
    ["more faults undone than made", { faults: 0, undoneFaults: 2 }, /^Faults on record: 0, of which undone: 2/],
    ["half a fault", { faults: 0.5 }, /^Faults on record: 0\.5/],
    ["a negative duration", { duration_ms: -1 }, /^The duration is -1/],
    ["a dial below the floor", { height_in: -3 }, /^The height is -3/],
    ["a seed that is none", { seed: 0.25 }, /^The seed is 0\.25/],
    ["a lock that is none", { profileId: "of-another-school" }, /does not have the lock "of-another-school"/],
    ["a later next change", { nextChangeDue: "2030-01-01" }, /^The next change is due on 2030-01-01/],
    ["a field that no record has", { honors: 1 }, /^The record has fields that no handover record has: "honors"/],
    ["proofs left out", { proofs: [] }, /^Its list of proofs/],
  ])("names %s, though its hash is made anew", async (_, fields, words) => {
    const record = { ...from020().record, ...fields };
    const { problems } = checkHandoverRecord({ record, sha256: hashOf(canonicalJson(record)) });
    expect(handoverSentences(problems)).toContainEqual(expect.stringMatching(words));
  });

  test("nested without end is refused in a sentence", async () => {
    let deep: unknown = 1;
    for (let k = 0; k < 20_000; k++) deep = [deep];
    const file = from020();
    expect(() => checkHandoverRecord({ ...file, record: { ...file.record, deep } })).toThrow(
      "this record is nested too deep to be read",
    );
  });
});
