import { describe, expect, test } from "vitest";
import { recordHash } from "../../../src/records/hashedRecord";
import type { SittingRecord } from "../../../src/records/sitting/sittingRecord";
import { type GivenSitting, judgeSitting, type SentTry } from "../../../src/school/assignments/judgeSitting";
import { findingSentences } from "../../../src/school/assignments/sittingFindings";
import { satRecord, VERSION } from "../../support/satRecord";

const HOUR = 3600 * 1000;
const BEGUN = 1_000_000;
const RECORD: SittingRecord = { ...satRecord(), seedFrom: "server" };

const GIVEN: GivenSitting = {
  personId: "tavro",
  sheet: RECORD.sheet,
  seed: RECORD.seed,
  seedFrom: "server",
  extraTime_percent: 0,
  begunAt: BEGUN,
  until: BEGUN + 2 * HOUR,
};

const SENT: readonly SentTry[] = RECORD.tries.map((result, index) => ({
  index,
  result,
  motion: RECORD.motions?.[index] ?? null,
  receivedAt: BEGUN + HOUR / 2 + index,
  waited_ms: 200,
}));

interface Changed {
  readonly record?: Partial<SittingRecord>;
  readonly given?: Partial<GivenSitting>;
  readonly sent?: readonly SentTry[];
  readonly personId?: string;
  readonly receivedAt?: number;
}

function judged({ record = {}, given = {}, sent = SENT, personId = "tavro", receivedAt = BEGUN + HOUR }: Changed = {}) {
  const whole = { ...RECORD, ...record };
  const body = JSON.parse(JSON.stringify({ record: whole, sha256: recordHash(whole) }));
  return judgeSitting({ ...GIVEN, ...given }, sent, { personId, body, receivedAt }, VERSION);
}

const codes = (found: readonly { readonly code: string }[]) => found.map(({ code }) => code);
const [FIRST, SECOND, ...OTHERS] = SENT;
if (FIRST === undefined || SECOND === undefined) throw new Error("the sitting has tries");

test("a sitting that agrees keeps the verdict of the server's own marking", () => {
  const found = judged();
  expect(found).toMatchObject({ problems: [], remarks: [], isLate: false, reloads: RECORD.interruptions });
  expect(found.marking).toEqual(RECORD.marking);
  expect(found.outcome).toBe("failed");
});

test("marks that were written better than they are come to nothing", () => {
  const found = judged({ record: { marking: { ...RECORD.marking, verdict: "pass" } } });
  expect([found.outcome, codes(found.problems)]).toEqual([null, ["other-marks"]]);
  expect(found.marking?.verdict).toBe("fail");
});

describe("what does not agree is told", () => {
  test.each<{ readonly why: string; readonly changed: Changed; readonly code: string }>([
    {
      why: "another sheet",
      changed: { given: { sheet: { ...RECORD.sheet, title: "x" } } },
      code: "other-sheet-than-given",
    },
    { why: "another seed", changed: { given: { seed: RECORD.seed + 1 } }, code: "other-seed-than-given" },
    { why: "a seed from elsewhere", changed: { record: { seedFrom: "address" } }, code: "other-origin" },
    { why: "time that nobody gave", changed: { record: { extraTime_percent: 50 } }, code: "other-extra-time" },
    {
      why: "time that was given, and is not on record",
      changed: { given: { extraTime_percent: 25 } },
      code: "other-extra-time",
    },
    { why: "another person", changed: { personId: "hill" }, code: "other-person" },
    {
      why: "more work than time",
      changed: { given: { begunAt: BEGUN + HOUR - RECORD.worked_ms + 10_001 } },
      code: "more-time-than-passed",
    },
    {
      why: "a try that was another when it was sent",
      changed: { sent: [{ ...FIRST, result: { ...FIRST.result, time_ms: 5 } }, SECOND, ...OTHERS] },
      code: "try-not-as-sent",
    },
    {
      why: "a motion that was another when it was sent",
      changed: { sent: [{ ...FIRST, motion: SECOND.motion }, SECOND, ...OTHERS] },
      code: "try-not-as-sent",
    },
    {
      why: "a try that the record left out",
      changed: { sent: [...SENT, { ...SECOND, index: RECORD.tries.length }] },
      code: "try-not-in-record",
    },
  ])("$why", ({ changed, code }) => {
    const found = judged(changed);
    expect(codes(found.problems)).toContain(code);
    expect(found.outcome).toBeNull();
    expect(findingSentences(found.problems).every((sentence) => sentence.endsWith("."))).toBe(true);
  });

  test("what is no record", () => {
    const found = judgeSitting(GIVEN, [], { personId: "tavro", body: { a: 1 }, receivedAt: BEGUN }, VERSION);
    expect(found).toMatchObject({ outcome: null, marking: null });
    expect(codes(found.problems)).toEqual(["not-readable"]);
  });
});

describe("losing the network speaks against nobody", () => {
  test.each<{ readonly why: string; readonly changed: Changed; readonly remarks: readonly string[] }>([
    { why: "in time to the last moment", changed: { receivedAt: GIVEN.until }, remarks: [] },
    { why: "after the window", changed: { receivedAt: GIVEN.until + 1 }, remarks: ["sent-late"] },
    { why: "no try but with the end", changed: { sent: [] }, remarks: ["tries-with-the-end"] },
    {
      why: "a try that came after the record",
      changed: { sent: [FIRST, { ...SECOND, receivedAt: BEGUN + HOUR + 1 }, ...OTHERS] },
      remarks: ["tries-with-the-end"],
    },
    {
      why: "a try that waited",
      changed: { sent: [FIRST, { ...SECOND, waited_ms: 61_000 }, ...OTHERS] },
      remarks: ["tries-waited"],
    },
    {
      why: "a wait that is usual",
      changed: { sent: [FIRST, { ...SECOND, waited_ms: 60_000 }, ...OTHERS] },
      remarks: [],
    },
  ])("$why", ({ changed, remarks }) => {
    const found = judged(changed);
    expect([codes(found.remarks), found.problems, found.outcome]).toEqual([remarks, [], "failed"]);
    expect(found.isLate).toBe(remarks.includes("sent-late"));
  });

  test("a motion that the page lost is the one that was sent", () => {
    const lost = RECORD.motions?.map((motion, index) => (index === 0 ? null : motion));
    expect(judged({ record: { motions: lost } })).toMatchObject({ problems: [], remarks: [] });
    expect(codes(judged({ record: { motions: lost }, sent: [] }).remarks)).toContain("one-not-replayed");
  });
});

test("a record of an earlier version, which knows no server, is read and marked", () => {
  const { seedFrom: _from, ...old } = { ...RECORD, appVersion: "0.2.0" };
  const body = JSON.parse(JSON.stringify({ record: old, sha256: recordHash(old) }));
  const found = judgeSitting(GIVEN, SENT, { personId: "tavro", body, receivedAt: BEGUN + HOUR }, VERSION);
  expect(codes(found.problems)).toEqual(["other-origin"]);
  expect(found.marking?.verdict).toBe("fail");
});

test("what is right is counted of all that the sheet asks", () => {
  expect(judged().right).toBe(3 / 4);
});
