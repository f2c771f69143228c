import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { classTable } from "../../src/progress/classTable";
import { declarationFor, declarationOf } from "../../src/progress/mastery";
import { handsOfClass, ofHand } from "../../src/progress/oneHand";
import { practicesOf } from "../../src/progress/practice";
import {
  attemptTry,
  handOfTry,
  jobTry,
  type SkillSummary,
  type SummedTry,
  summaryAfter,
  summaryOf,
} from "../../src/progress/skillSummary";
import { handsOfSummaries, summaryTable } from "../../src/progress/summaryTable";
import { describeSource, type SourceDescription } from "../../src/realdial/sources/sourceDescription";
import type { AttemptRecord } from "../../src/records/attemptRecord";
import type { JobRecord } from "../../src/records/jobRecord";
import type { DeclarationRecord } from "../../src/records/records";
import { bySkill, skillKey } from "../../src/records/skill";
import { aJob, anAttempt, aPerson, contents, NOON, stopsOf } from "../support/logbookRecords";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const COARSE = { ...describeSource("encoder", 1, 0.012), isCoarse: true };
const HANDS: readonly (readonly SourceDescription[] | undefined)[] = [undefined, [ENCODER], [COARSE]];
const DAY_MS = 86_400_000;
const PEOPLE = [aPerson("tavro"), aPerson("mibsy")];

const made = {
  // Often at one moment, so that ids decide; days apart, so that readiness lapses.
  day: fc.integer({ min: 0, max: 60 }),
  hand: fc.constantFrom(...HANDS),
  isRight: fc.boolean(),
  personId: fc.constantFrom("tavro", "mibsy"),
};

const attempts = fc
  .array(
    fc.record({
      ...made,
      error: fc.integer({ min: -80, max: 80 }),
      help: fc.constantFrom("full" as const, "silent" as const),
      seconds: fc.integer({ min: 0, max: 3 }),
      isLate: fc.boolean(),
    }),
    { maxLength: 60 },
  )
  .map((list) =>
    list.map(({ day, hand, isRight, personId, error, help, seconds, isLate }, k) =>
      anAttempt(`a${k}`, {
        ...{ personId, startedAt: NOON + day * DAY_MS, opened: isRight, duration_ms: seconds * 1000, help },
        stops: stopsOf(error / 10, -error / 20, 0),
        ...(isLate && { isLate }),
        ...(hand && { sources: [...hand] }),
      }),
    ),
  );

const jobs = fc
  .array(fc.record({ ...made, kind: fc.constantFrom("change" as const, "fitting" as const) }), { maxLength: 30 })
  .map((list) =>
    list.map(({ day, hand, isRight, personId, kind }, k) =>
      aJob(`j${k}`, {
        ...{ personId, kind, isRight, startedAt: NOON + day * DAY_MS },
        ...(hand && kind !== "fitting" && { sources: [...hand] }),
      }),
    ),
  );

/** The declarations that a bench keeps of all this, by its hands and people. */
function declarationsOf(dialed: readonly AttemptRecord[], done: readonly JobRecord[]): DeclarationRecord[] {
  const all = practicesOf(dialed, done);
  return PEOPLE.flatMap(({ id }) =>
    handsOfClass(all).flatMap((hand) =>
      bySkill(
        ofHand(
          all.filter(({ personId }) => personId === id),
          hand,
        ),
      ).flatMap(({ skill, attempts: own }) => declarationOf(id, skill, own) ?? []),
    ),
  ).filter((one, k, every) => every.findIndex(({ id }) => id === one.id) === k);
}

/** Summed up one by one as the tries come; anew where one comes too late, as a server does. */
function summed(tries: readonly SummedTry[], declarations: readonly DeclarationRecord[]) {
  const found = new Map<string, { personId: string; come: SummedTry[]; summary: SkillSummary | null }>();
  for (const one of tries) {
    const { personId } = one.practice;
    const hand = handOfTry(one);
    const key = JSON.stringify([personId, skillKey(one.practice), hand]);
    const own = declarations.filter((declaration) => declaration.personId === personId);
    const declaration = declarationFor(own, one.practice, undefined, hand ?? "screen") ?? null;
    const { come, summary } = found.get(key) ?? { come: [], summary: null };
    const all = [...come, one];
    found.set(key, {
      personId,
      come: all,
      summary: summaryAfter(summary, one, declaration) ?? summaryOf(all, declaration),
    });
  }
  return [...found.values()].flatMap(({ personId, summary }) => (summary === null ? [] : [{ personId, summary }]));
}

/** Numbers as they are but for rounding, and nothing of how somebody came to where they are. */
const rounded = (value: unknown): unknown =>
  JSON.parse(
    JSON.stringify(value, (key, one) => {
      if (key === "scores" || key === "wasReady") return undefined;
      return typeof one === "number" && !Number.isInteger(one) ? Number(one.toFixed(9)) : one;
    }),
  );

describe("summaries", () => {
  test("make the class table that all records make, in whatever order they come", () => {
    const arrival = fc.tuple(attempts, jobs).chain(([dialed, done]) => {
      const tries = [...dialed.map(attemptTry), ...done.map(jobTry)];
      const order = fc.shuffledSubarray(tries, { minLength: tries.length, maxLength: tries.length });
      return fc.record({
        dialed: fc.constant(dialed),
        done: fc.constant(done),
        order,
        isDeclared: fc.boolean(),
        now: fc.option(fc.integer({ min: 0, max: 300 }), { nil: undefined }),
      });
    });
    fc.assert(
      fc.property(arrival, ({ dialed, done, order, isDeclared, now: day }) => {
        const now = day === undefined ? undefined : NOON + day * DAY_MS;
        const declarations = isDeclared ? declarationsOf(dialed, done) : [];
        const book = contents([...PEOPLE], dialed);
        const logbook = { ...book, records: { ...book.records, jobs: done, declarations } };
        const summaries = summed(order, declarations);
        const hands = handsOfClass(practicesOf(dialed, done));
        expect(handsOfSummaries(summaries)).toEqual(hands);
        for (const hand of hands) {
          const table = classTable([logbook], undefined, { now, hand });
          expect(rounded(summaryTable(PEOPLE, summaries, { now, hand }))).toEqual(rounded(table));
        }
        // As a database keeps them.
        const kept = JSON.parse(JSON.stringify(summaries));
        expect(rounded(summaryTable(PEOPLE, kept, { now }))).toEqual(rounded(summaryTable(PEOPLE, summaries, { now })));
      }),
      { numRuns: 150 },
    );
  });
});
