import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { gaugeView } from "../../src/app/desk/gaugeWords";
import { personTables } from "../../src/app/desk/personTables";
import { classTable } from "../../src/progress/classTable";
import { declarationFor, declarationOf, mastery } from "../../src/progress/mastery";
import { missesToRedo } from "../../src/progress/missesToRedo";
import { numberToBeat } from "../../src/progress/numberToBeat";
import { handsOfClass, handsTried, jobsOfHand, ofHand } from "../../src/progress/oneHand";
import { personalBests } from "../../src/progress/personalBest";
import { practicesOf } from "../../src/progress/practice";
import { whatNext } from "../../src/progress/whatNext";
import { type Hand, handOf } from "../../src/realdial/sources/handOf";
import { describeSource, type SourceDescription } from "../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../src/realdial/sources/sourcesSeen";
import type { AttemptRecord } from "../../src/records/attemptRecord";
import type { JobRecord } from "../../src/records/jobRecord";
import type { LogbookContents } from "../../src/records/logbookContents";
import { aJob, anAttempt, contents, NOON, stopsOf, theirPeople } from "../support/logbookRecords";

const ENCODER = describeSource("encoder", 100 / 2400, 0.012);
const PRINTED = describeSource("printed-dial", 0.02, 0.013);
/** What each hand leaves in a record. */
const BY_HAND: readonly (readonly SourceDescription[] | undefined)[] = [
  undefined,
  [ENCODER],
  [PRINTED],
  [SCREEN_SOURCE, ENCODER],
];
const SKILL = { profileId: "three-wheel", exercise: "open" };
const PERSON = "tavro";
const MINUTE = 60_000;

const made = {
  minute: fc.integer({ min: 0, max: 200_000 }),
  hand: fc.constantFrom(...BY_HAND),
  isRight: fc.boolean(),
  personId: fc.constantFrom(PERSON, "mibsy"),
};

const attempts = fc
  .array(fc.record({ ...made, error: fc.integer({ min: -30, max: 30 }), number: fc.constantFrom(29, 30) }), {
    maxLength: 40,
  })
  .map((list) =>
    list
      .map(({ minute, hand, isRight, personId, error, number }, k) =>
        anAttempt(`a${k}`, {
          ...{ personId, startedAt: NOON + minute * MINUTE, opened: isRight, duration_ms: 20_000 + 100 * error },
          ...{ combination: [number, 92, 54], stops: stopsOf(error / 10, -error / 20, 0) },
          ...(hand && { sources: [...hand] }),
        }),
      )
      .sort((one, other) => one.startedAt - other.startedAt),
  );

const jobs = fc
  .array(fc.record({ ...made, kind: fc.constantFrom("change" as const, "trouble" as const, "fitting" as const) }), {
    maxLength: 20,
  })
  .map((list) =>
    list
      .map(({ minute, hand, isRight, personId, kind }, k) =>
        aJob(`j${k}`, {
          ...{ personId, startedAt: NOON + minute * MINUTE, isRight, kind },
          ...(hand && kind !== "fitting" && { sources: [...hand] }),
        }),
      )
      .sort((one, other) => one.startedAt - other.startedAt),
  );

const NOW = NOON + 300_000 * MINUTE;

const bookOf = (some: readonly AttemptRecord[], work: readonly JobRecord[]): LogbookContents => {
  const book = contents(theirPeople, some);
  return { ...book, records: { ...book.records, jobs: work } };
};

const isTavro = ({ personId }: { readonly personId: string }) => personId === PERSON;

/** Every figure there is of one hand, from all that was tried with any. */
function figuresOf(hand: Hand, some: readonly AttemptRecord[], work: readonly JobRecord[]) {
  const own = some.filter(isTavro);
  const ownJobs = work.filter(isTavro);
  const book = bookOf(some, work);
  const names = new Map<string, string>();
  const { hands: _hands, ...next } = whatNext(own, [], NOW, 0, ownJobs, undefined, hand);
  const isHands = (one: { readonly hand: Hand }) => one.hand === hand;
  const isByHand = (one: AttemptRecord) => handOf(one) === hand;
  const shown = declarationOf(PERSON, SKILL, ofHand(own, hand));
  return JSON.stringify([
    next,
    mastery(SKILL, ofHand(own, hand)),
    shown,
    personalBests(own).filter(isHands),
    missesToRedo(own).filter(isByHand),
    numberToBeat(ofHand(own, hand)),
    classTable([book], [SKILL, { ...SKILL, exercise: "change" }], { now: NOW, hand }),
    gaugeView(book, SKILL, null, names, hand),
    personTables(book, PERSON, null, hand),
  ]);
}

describe("a figure of one hand", () => {
  test.each<Hand>(["screen", "encoder", "printed-dial", "mixed"])(
    "of %s does not change by what others try",
    (hand) => {
      fc.assert(
        fc.property(attempts, jobs, (all, work) => {
          const few = all.filter((one) => handOf(one) === hand);
          const fewJobs = jobsOfHand(work, hand);
          // Where nothing was tried with it, there is nothing that could be shown of it.
          fc.pre(few.some(isTavro));
          expect(figuresOf(hand, all, work)).toBe(figuresOf(hand, few, fewJobs));
        }),
        { numRuns: 60 },
      );
    },
  );

  test("is of a hand that was tried: the one used last, until another is chosen", () => {
    const some = [anAttempt("a"), anAttempt("b", { sources: [ENCODER] })];
    const of = (wanted: Hand | null) => whatNext(some, [], NOON, 0, [], undefined, wanted);
    expect(of(null)).toMatchObject({ hand: "encoder", hands: ["encoder", "screen"] });
    expect(of("screen").hand).toBe("screen");
    expect(of("phone").hand).toBe("encoder");
    expect(whatNext([], [], NOON)).toMatchObject({ hand: "screen", hands: ["screen"] });
  });
});

test("a class is seen by the screen where anyone used it, whoever else used something", () => {
  const screen = anAttempt("a");
  const encoder = anAttempt("b", { sources: [ENCODER] });
  const printed = anAttempt("c", { sources: [PRINTED] });
  expect(handsOfClass([screen, printed, encoder])).toEqual(["screen", "encoder", "printed-dial"]);
  expect(handsOfClass([printed, encoder])).toEqual(["encoder", "printed-dial"]);
  expect(handsOfClass([])).toEqual(["screen"]);
  expect(classTable([contents(theirPeople, [screen, encoder])]).hand).toBe("screen");
  expect(classTable([contents(theirPeople, [encoder])]).hand).toBe("encoder");
});

describe("jobs", () => {
  const fitted = aJob("f", { kind: "fitting" });
  const changed = aJob("c", { sources: [ENCODER] });

  test("that turn no dial are of no hand, and count beside each", () => {
    expect(jobsOfHand([fitted, changed], "screen")).toEqual([fitted]);
    expect(jobsOfHand([fitted, changed], "encoder")).toEqual([fitted, changed]);
    expect(handsTried(practicesOf([], [fitted]))).toEqual(["screen"]);
    expect(handsTried(practicesOf([], [changed, fitted]))).toEqual(["encoder"]);
  });

  test("of two hands are two practices", () => {
    const right = Array.from({ length: 12 }, (_, k) => aJob(`r${k}`, { startedAt: NOON + k, sources: [ENCODER] }));
    const wrong = aJob("w", { startedAt: NOON + 99, isRight: false });
    expect(whatNext([], [], NOON, 0, [...right, wrong]).suggestions.map(({ kind }) => kind)).toEqual([
      "redo-misses",
      "go-on",
    ]);
    expect(whatNext([], [], NOON, 0, [...right, wrong], undefined, "encoder").suggestions).toEqual([]);
  });
});

describe("a skill shown", () => {
  const openings = (sources: SourceDescription[] | undefined) =>
    Array.from({ length: 12 }, (_, k) => anAttempt(`o${k}`, { startedAt: NOON + k, ...(sources && { sources }) }));

  test("with each hand is shown by itself, under a name of its own, and is found by its hand", () => {
    const shown = BY_HAND.map((hand) => declarationOf(PERSON, SKILL, openings(hand && [...hand])));
    const all = shown.filter((one) => one !== null);
    expect(all).toHaveLength(4);
    expect(new Set(all.map(({ id }) => id)).size).toBe(4);
    expect(all.map(({ sources }) => sources)).toEqual(BY_HAND);
    expect(all.map((one) => declarationFor(all, SKILL, undefined, handOf(one)))).toEqual(all);
    expect(declarationFor(all.slice(1), SKILL)).toBeUndefined();
  });

  test("without a dial is shown for each hand", () => {
    const fits = Array.from({ length: 12 }, (_, k) => aJob(`f${k}`, { kind: "fitting", startedAt: NOON + k }));
    const fitting = { ...SKILL, exercise: "fitting" };
    const shown = declarationOf(PERSON, fitting, practicesOf([], fits));
    expect(shown).not.toHaveProperty("sources");
    expect(declarationFor(shown === null ? [] : [shown], fitting, undefined, "encoder")).toBe(shown);
  });
});
