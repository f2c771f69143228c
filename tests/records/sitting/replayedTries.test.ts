import { describe, expect, test } from "vitest";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import { recordHash } from "../../../src/records/hashedRecord";
import { motionText } from "../../../src/records/motion/traceCodec";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { readSittingRecord } from "../../../src/records/sitting/readSittingRecord";
import type { SittingRecord } from "../../../src/records/sitting/sittingRecord";
import { checkedInWords } from "../../support/checkedInWords";
import { satRecord, VERSION } from "../../support/satRecord";

const RECORD = satRecord();

/** Checks a record as one that was hashed anew, for that version. */
async function checked(record: SittingRecord, appVersion = VERSION) {
  const file = { record, sha256: recordHash(record) };
  const read = readSittingRecord(JSON.parse(JSON.stringify(file)));
  return checkedInWords(checkRecord(read.record, read.sha256, appVersion));
}

const withTry = (index: number, fields: object): SittingRecord => ({
  ...RECORD,
  tries: RECORD.tries.map((one, k) => (k === index ? ({ ...one, ...fields } as typeof one) : one)),
});

describe("a record with its recordings", () => {
  test("is sound, and every try of it was replayed", async () => {
    expect(RECORD.tries.map((one) => one.kind === "dialing" && one.opened)).toEqual([true, false, true, true]);
    expect(await checked(RECORD)).toMatchObject({ problems: [], unheld: [], unchecked: [], replayed: 4 });
  });

  test("holds a motion of some seconds in a few thousand letters", () => {
    const lengths = (RECORD.motions ?? []).map((packed) => packed?.length ?? 0);
    expect(Math.min(...lengths)).toBeGreaterThan(100);
    expect(Math.max(...lengths)).toBeLessThan(4000);
  });

  test.each<[string, object, RegExp]>([
    [
      "an opening that was none",
      { opened: true, stopErrors: [0, 0, 0], faults: [] },
      /^Try 2 is recorded as opened, but its recording does not open/,
    ],
    ["a better stop", { stopErrors: [0, 0.5, 0] }, /^Try 2 has other stop errors than its recording/],
    ["a fault left out", { faults: [] }, /^Try 2 has other faults than its recording/],
    ["a quicker try", { time_ms: 900 }, /^Try 2 is recorded with 900 ms, but its recording lasts \d+ ms/],
  ])("names %s", async (_, fields, words) => {
    expect((await checked(withTry(1, fields))).problems).toContainEqual(expect.stringMatching(words));
  });

  test("names a recording that was copied from another try", async () => {
    const copied = { ...RECORD, motions: (RECORD.motions ?? []).with(1, RECORD.motions?.[0] ?? null) };
    const { problems } = await checked(copied);
    expect(problems).toContainEqual("Tries 1 and 2 have the same recording.");
    expect(problems).toContainEqual(expect.stringMatching(/^Try 2 starts from another place/));
  });

  test("names a recording that cannot be read, and one that the lock cannot follow", async () => {
    const odd = (packed: string) => checked({ ...RECORD, motions: (RECORD.motions ?? []).with(0, packed) });
    expect((await odd("AAAA")).problems).toContainEqual("Try 1 has a recording that cannot be read.");
    const slack = motionText({ start: { dial: 0, slack: [9e9, 0, 0] }, positions: [0, 1, 2], times_ms: [0, 1, 2] });
    expect((await odd(slack)).problems).toContainEqual(expect.stringMatching(/^Try 1 /));
  });

  test("says which tries have no recording, and calls none of their openings replayed", async () => {
    const { problems, unchecked, replayed } = await checked({
      ...RECORD,
      motions: (RECORD.motions ?? []).with(2, null),
    });
    expect({ problems, unchecked, replayed }).toEqual({
      problems: [],
      unchecked: ["Try 3 has no recording: it was not replayed."],
      replayed: 3,
    });
  });

  test("says which tries have no recording because the candidate chose to keep none", async () => {
    const sources = [describeSource("ordinary-dial", 0.06, null, false)];
    const motions = (RECORD.motions ?? []).with(2, null).with(3, null);
    const { problems, unchecked } = await checked({ ...withTry(2, { sources }), motions });
    expect({ problems, unchecked }).toEqual({
      problems: [],
      unchecked: [
        "Try 4 has no recording: it was not replayed.",
        "Try 3 was turned with no motion kept, as the candidate chose: it was not replayed.",
      ],
    });
  });

  test("of another version: an opening that its recording does not make counts against it all the same", async () => {
    const forged = { ...withTry(1, { opened: true, stopErrors: [0, 0, 0], faults: [] }), appVersion: "0.2.9" };
    const { problems, unheld } = await checked(forged);
    expect(problems).toContainEqual(expect.stringMatching(/^Try 2 is recorded as opened/));
    expect(unheld).toContainEqual(expect.stringMatching(/^Try 2 has other stop errors/));
  });
});
