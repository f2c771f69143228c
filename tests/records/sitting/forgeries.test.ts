import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { canonicalJson } from "../../../src/drill/canonicalJson";
import { DrillError } from "../../../src/drill/drillError";
import { stationProfile } from "../../../src/drill/sheet/stationProfile";
import { tryChance } from "../../../src/drill/sitting/tryChance";
import { stationTrouble } from "../../../src/handover/trouble/stationTrouble";
import { recordHash } from "../../../src/records/hashedRecord";
import { type SittingFacts, type SittingRecord, sittingRecord } from "../../../src/records/sitting/sittingRecord";
import { sittingShown } from "../../../src/records/sitting/sittingShown";
import { checkedInWords } from "../../support/checkedInWords";
import { satRecord, VERSION } from "../../support/satRecord";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 120_000 });

type Json = ReturnType<typeof JSON.parse>;

const fixture = (name: string): Json => JSON.parse(readFileSync(`tests/fixtures/0.2.0/${name}.json`, "utf8"));
const plain = (value: unknown): Json => JSON.parse(JSON.stringify(value));

const DIALED: SittingRecord = satRecord();

/** A sitting of every kind of job, as if this version had made it. */
async function everyKind(): Promise<SittingRecord> {
  const {
    format: _f,
    version: _v,
    notice: _n,
    profileHashes: _p,
    marking: _m,
    ...facts
  } = fixture("sitting-failed").record;
  const since0_3 = {
    seedFrom: "drawn",
    breaks: [{ kind: "reload", at_ms: 0, length_ms: 900 }],
    clockJumps: [],
  } as const;
  const { sheet, seed, tries } = facts as SittingFacts;
  const drawn = tries.map((one, index) => {
    const station = sheet.stations[one.station];
    if (one.kind !== "trouble" || station?.kind !== "trouble") return one;
    const { task } = stationTrouble(stationProfile(station), station, tryChance(seed, index));
    return { ...one, condition: task.trouble.kind };
  });
  return plain(sittingRecord({ ...(facts as SittingFacts), ...since0_3, tries: drawn, appVersion: VERSION }));
}
const JOBS = await everyKind();

/** What checking a record comes to that was hashed anew after it was changed. */
async function verdictOn(record: Json): Promise<string[]> {
  const hash = recordHash(record);
  try {
    return checkedInWords(sittingShown(plain({ record, sha256: hash }), VERSION).check).problems;
  } catch (error) {
    if (error instanceof DrillError) return [error.message];
    throw error;
  }
}

/** A copy with something done to it. */
const changed = (record: SittingRecord, change: (copy: Json) => void): Json => {
  const copy = plain(record);
  change(copy);
  return copy;
};

test("the records that forgeries are made of are sound themselves", async () => {
  expect(await verdictOn(DIALED)).toEqual([]);
  expect(await verdictOn(JOBS)).toEqual([]);
});

type Forgery = readonly [name: string, of: SittingRecord, change: (copy: Json) => void, says: RegExp];

const FORGERIES: readonly Forgery[] = [
  // Malformed.
  ["tries that are none", DIALED, (r) => (r.tries = [null]), /record\.tries\[0\] must have a kind/],
  ["tries that are no list", DIALED, (r) => (r.tries = {}), /record\.tries must be a list/],
  ["a try without its time", DIALED, (r) => delete r.tries[0].time_ms, /record\.tries\[0\]\.time_ms must be a number/],
  ["a time that is a text", DIALED, (r) => (r.worked_ms = "long"), /record\.worked_ms must be a number/],
  [
    "a field that no record has",
    DIALED,
    (r) => (r.honors = "first"),
    /record has a field "honors" that does not belong there/,
  ],
  ["a field that no try has", DIALED, (r) => (r.tries[0].bonus = 1), /record\.tries\[0\] has a field "bonus"/],
  [
    "a changed notice",
    DIALED,
    (r) => (r.notice = "Certificate of the trade."),
    /record\.notice must be "Practice result/,
  ],
  [
    "a verdict that is none",
    DIALED,
    (r) => (r.marking.verdict = "distinction"),
    /record\.marking\.verdict must be "pass", "fail" or "not shown"/,
  ],
  ["a start that is no moment", DIALED, (r) => (r.startedAt = "last Friday"), /record\.startedAt must be a date/],
  ["a sheet that is none", DIALED, (r) => (r.sheet = { title: "x" }), /record\.sheet/],
  ["a sheet with a field of its own", DIALED, (r) => (r.sheet.grace = 3), /record\.sheet.*"grace"/],
  [
    "a fault that is none",
    DIALED,
    (r) => (r.tries[1].faults = [{ code: "bad-luck", number: 1, size: 1 }]),
    /faults\[0\]\.code must be "wrong-way"/,
  ],
  ["marks nested in marks", DIALED, (r) => (r.marking = { marking: r.marking }), /record\.marking/],
  // Impossible.
  ["a negative time", DIALED, (r) => (r.tries[0].time_ms = -5), /time_ms must be a number of milliseconds from 0/],
  ["a negative count of pauses", DIALED, (r) => (r.pauses = -1), /record\.pauses must be a whole number from 0/],
  [
    "tries longer than the sitting",
    DIALED,
    (r) => (r.worked_ms = 2000),
    /^The tries took .* s together, but the whole sitting took 2\.0 s/,
  ],
  ["a try made twice", DIALED, (r) => (r.tries[1].repetition = 1), /^Try 2 has the same place as an earlier one/],
  [
    "a try too many",
    DIALED,
    (r) => Object.assign(r, { tries: [...r.tries, r.tries[0]], motions: [...r.motions, null] }),
    /^The sheet has 4 tries, but 5 are on record/,
  ],
  [
    "a try left out",
    DIALED,
    (r) => Object.assign(r, { tries: r.tries.slice(0, 3), motions: r.motions.slice(0, 3) }),
    /^It is recorded as finished, but some/,
  ],
  [
    "a station that is not there",
    DIALED,
    (r) => (r.tries[0].station = 9),
    /^Try 1 is at a station that the sheet does not have/,
  ],
  ["a repetition that is not there", DIALED, (r) => (r.tries[3].repetition = 7), /^Try 4 is repetition 7/],
  ["a try of another kind", JOBS, (r) => (r.tries[3] = { ...r.tries[4], station: 3 }), /^Try 4 is of kind "trouble"/],
  ["a lost try that opened", JOBS, (r) => (r.tries[6].opened = true), /^Try 7 is recorded as lost, but has a result/],
  [
    "more tries lost than reloads",
    JOBS,
    (r) => (r.interruptions = 0),
    /^Tries lost to a reload: 1; reloads on record: 0/,
  ],
  [
    "an opening outside its tolerance",
    JOBS,
    (r) => (r.tries[0].opened = true),
    /^Try 1 is recorded as opened, but its stop at number 2/,
  ],
  [
    "an opening with a stop left out",
    JOBS,
    (r) => (r.tries[7].stopErrors = [0, 0]),
    /^Try 8 has 2 stop errors, but its lock has 3/,
  ],
  ["an opening in no time", JOBS, (r) => (r.tries[7].time_ms = 0), /^Try 8 is recorded as opened in no time/],
  [
    "an opening never drawn",
    JOBS,
    (r) => (r.tries[7].faults = [{ code: "not-drawn", number: 3, size: 4 }]),
    /as opened, but the bolt was never drawn/,
  ],
  [
    "a zero better than its readings",
    JOBS,
    (r) => (r.tries[2].means.left = 0),
    /^Try 3 does not follow from its stops/,
  ],
  [
    "a bad reading counted",
    JOBS,
    (r) => {
      r.tries[2].readings[0].refusal = null;
      r.tries[2].refused = 0;
    },
    /^Try 3 counts stop 1, which is too far off/,
  ],
  ["a refusal left out", JOBS, (r) => (r.tries[2].refused = 0), /^Try 3 counts 0 refused stops, but 1 is on record/],
  [
    "trouble named right that was not",
    JOBS,
    (r) => (r.tries[4].isNamedRight = true),
    /^Try 5 is recorded as named right: "nothing"/,
  ],
  [
    "a change proved in no time",
    JOBS,
    (r) => Object.assign(r.tries[3], { outcome: "true", proofs: 3 }),
    /^Try 4 is recorded as changed and proved in no time/,
  ],
  [
    "a handover in no time",
    JOBS,
    (r) => (r.tries[5].isHandedOver = true),
    /^Try 6 is recorded as handed over in no time/,
  ],
  [
    "time up where there is no limit",
    DIALED,
    (r) => (r.ended = "time"),
    /^It is recorded as ended because time was up, but the sheet sets no time limit/,
  ],
  [
    "a reload listed that is not counted",
    DIALED,
    (r) => (r.breaks = [{ kind: "reload", at_ms: 5, length_ms: 5 }]),
    /^Reloads on record: 0; reloads listed/,
  ],
  [
    "a pause after the end",
    DIALED,
    (r) => Object.assign(r, { pauses: 1, breaks: [{ kind: "pause", at_ms: 9e8, length_ms: 5 }] }),
    /lies after the end/,
  ],
  ["no fingerprint of the sheet", DIALED, (r) => delete r.sheetSha256, /^It has no fingerprint of the sheet/],
  ["no word on the seed", DIALED, (r) => delete r.seedFrom, /^It has no word on the origin of its seed/],
  ["no list of breaks", DIALED, (r) => delete r.breaks, /^It has no list of pauses and reloads/],
  ["no list of clock jumps", JOBS, (r) => delete r.clockJumps, /^It has no list of clock jumps/],
  ["a version that is none", DIALED, (r) => (r.appVersion = "0.-3.0"), /appVersion must be a version such as/],
  // Forged, and hashed and marked anew where that would hide it.
  ["a verdict", DIALED, (r) => (r.marking.verdict = "pass"), /^The marks do not follow from the tries/],
  [
    "an eased mark",
    DIALED,
    (r) => (r.sheet.stations[0].passMarks.firstTime = 1),
    /^The sheet's fingerprint on record is not/,
  ],
  [
    "an opening without its recording's word",
    DIALED,
    (r) => Object.assign(r.tries[1], { opened: true, stopErrors: [0, 0, 0], faults: [] }),
    /^Try 2 is recorded as opened, but its recording does not open/,
  ],
  [
    "a recording of another try",
    DIALED,
    (r) => (r.motions[1] = r.motions[0]),
    /^Tries 1 and 2 have the same recording/,
  ],
  ["a truer stop", DIALED, (r) => (r.tries[0].stopErrors[0] = 0), /^Try 1 has other stop errors than its recording/],
  ["a quicker try", DIALED, (r) => (r.tries[0].time_ms = 1000), /^Try 1 is recorded with 1000 ms, but its recording/],
  ["another seed", DIALED, (r) => (r.seed = 6), /^Try 1 is not the one that sheet and seed lead to/],
];

describe("every forgery is named, though its hash is made anew", () => {
  test.each(FORGERIES)("%s", async (_, record, change, says) => {
    const forged = changed(record, change);
    expect(canonicalJson(forged)).not.toBe(canonicalJson(record));
    expect(await verdictOn(forged)).toContainEqual(expect.stringMatching(says));
  });

  test("and none of them has a result that may be shown", async () => {
    for (const [, record, change] of FORGERIES) {
      const forged = changed(record, change);
      const body = plain({ record: forged, sha256: recordHash(forged) });
      try {
        expect(sittingShown(body, VERSION).outcome).toBeNull();
      } catch (error) {
        expect(error).toBeInstanceOf(DrillError);
      }
    }
  });

  test("a change under the old hash is named whatever it is", async () => {
    const hash = recordHash(DIALED);
    const renamed = changed(DIALED, (r) => (r.person = "Mibsy"));
    const { check, outcome } = sittingShown({ record: renamed, sha256: hash }, VERSION);
    expect(checkedInWords(check).problems).toEqual([
      expect.stringMatching(/^The record is not the one that the hash was made from/),
    ]);
    expect(outcome).toBeNull();
  });
});

describe("records of version 0.2.0", () => {
  test.each([
    ["sitting-passed", "passed", "Two locks, three questions"],
    ["sitting-failed", "failed", "Every kind of job"],
  ])(
    "%s opens and says what it came to; its openings are not replayed, for it has no recordings",
    (name, outcome, title) => {
      const shown = sittingShown(fixture(name), VERSION);
      expect(shown).toMatchObject({ outcome, title, person: "Mibsy", appVersion: "0.2.0" });
      expect(shown.check.problems).toEqual([]);
      expect(checkedInWords(shown.check).unchecked).toEqual([
        "There are no recordings in this record: its openings were not replayed.",
      ]);
    },
  );

  test("hides no forgery: what does not hang on the version is held against it", async () => {
    const forged = changed(fixture("sitting-failed").record, (r) => (r.tries[0].opened = true));
    expect(await verdictOn(forged)).toContainEqual(expect.stringMatching(/^Try 1 is recorded as opened, but its stop/));
  });
});

/** Every place of a value: the ways to its leaves and branches. */
function placesOf(value: Json, way: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (typeof value !== "object" || value === null) return [way];
  const keys: (string | number)[] = Array.isArray(value) ? [...value.keys()] : Object.keys(value);
  return [...(way.length > 0 ? [way] : []), ...keys.flatMap((key) => placesOf(value[key], [...way, key]))];
}

/** Puts a value at a place. */
function put(copy: Json, way: readonly (string | number)[], value: unknown): void {
  const holder = way.slice(0, -1).reduce((at: Json, key) => at[key], copy);
  holder[way.slice(-1)[0] ?? ""] = value;
}

const anything = fc.oneof(
  fc.integer({ min: -3, max: 5 }),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.boolean(),
  fc.constant(null),
  fc.constantFrom("pass", "accept", "opened", "", "x".repeat(300)),
  fc.constant([]),
  fc.constant({}),
);

describe("a record changed at any place, its hash made anew", () => {
  const PLACES = placesOf(DIALED);
  /** Sizes to a hundred-thousandth of a graduation, times to 2 ms: what a check takes for the same. */
  const rounded = (value: Json, unit: number) =>
    typeof value === "number" ? Math.round(value / unit) * unit + 0 : value;
  /** What a record says that its recordings must bear out. */
  const said = ({ tries }: Json) =>
    tries.map((one: Json) => ({
      ...one,
      time_ms: null,
      stopErrors: one.stopErrors.map((error: Json) => rounded(error, 1e-5)),
      faults: one.faults.map((each: Json) => ({ ...each, size: rounded(each.size, 1e-5) })),
    }));
  const times = ({ tries }: Json) => tries.map(({ time_ms }: Json) => time_ms);

  /** Openings, stop errors, faults, times and marks follow from the recordings: none can be changed unnamed. */
  const expectSame = (forged: Json) => {
    expect(said(forged)).toEqual(said(DIALED));
    expect(forged.marking).toEqual(plain(DIALED).marking);
    const off = times(forged).map((time: number, k: number) => Math.abs(time - times(DIALED)[k]));
    expect(Math.max(...off)).toBeLessThanOrEqual(1);
  };

  test("is read or refused with a sentence, and never throws anything else", async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...PLACES), anything, async (way, value) => {
        const forged = changed(DIALED, (copy) => put(copy, way, value));
        const problems = await verdictOn(forged);
        expect(problems.every((problem) => /\S/.test(problem))).toBe(true);
        if (problems.length === 0) expectSame(forged);
      }),
      { numRuns: 300 },
    );
  });

  test("or any JSON at all", () => {
    fc.assert(
      fc.property(fc.jsonValue(), (value) => {
        try {
          sittingShown(value, VERSION);
        } catch (error) {
          expect(error).toBeInstanceOf(DrillError);
        }
      }),
    );
  });

  test("or nested without end", () => {
    let deep: Json = 1;
    for (let k = 0; k < 20_000; k++) deep = [deep];
    const file = { record: { ...plain(DIALED), tries: deep }, sha256: "0" };
    expect(() => sittingShown(file, VERSION)).toThrow(DrillError);
    expect(() => sittingShown({ ...file, record: { ...plain(DIALED), sheet: deep } }, VERSION)).toThrow(DrillError);
  });
});
