import { describe, expect, test } from "vitest";
import { lostTry } from "../../../src/drill/marking/lostTry";
import { SHIPPED_QUESTIONS } from "../../../src/drill/questions/shippedQuestions";
import { planTries } from "../../../src/drill/sheet/planTries";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { sittingQuestions } from "../../../src/drill/sitting/sittingQuestions";
import { recordHash } from "../../../src/records/hashedRecord";
import { checkRecord } from "../../../src/records/sitting/checkRecord";
import { type SittingFacts, type SittingRecord, sittingRecord } from "../../../src/records/sitting/sittingRecord";
import { seededChance } from "../../../src/statistics/chance";
import { checkedInWords } from "../../support/checkedInWords";
import { changeStation, dialingStation, handoverStation, testSheet } from "../../support/testSheet";
import { changeTry, dialingTry, handoverTry } from "../../support/testTries";

const SITTING = {
  pauseAllowed: false,
  onReload: "resume",
  clockHideable: true,
  questions: {
    topics: [
      { topic: "zeroing", count: 2 },
      { topic: "records", count: 1 },
    ],
    passMark: 2,
  },
} as const;
const SHEET = testSheet({
  order: "random",
  sitting: SITTING,
  stations: [
    dialingStation({ repetitions: 3, combinations: { policy: "drawn" }, passMarks: { firstTime: 2 } }),
    changeStation({ repetitions: 2, passMarks: { right: 1 } }),
    handoverStation({ repetitions: 1, passMarks: { clean: 1 } }),
  ],
});
const SEED = 11;

/** A sitting by the sheet in which everything went right. */
function factsOf(sheet: Sheet): SittingFacts {
  const tries = planTries(sheet, seededChance(SEED)).map(({ station, repetition, combination }) => {
    const numbers = combination ?? [];
    const place = { station, repetition };
    if (sheet.stations[station]?.kind === "dialing") return dialingTry({ ...place, combination: numbers });
    return combination === null ? handoverTry(place) : changeTry({ ...place, combination: numbers });
  });
  const answers = sittingQuestions(sheet, SEED).map(({ question: { id, answer } }) => {
    return { questionId: id, choice: answer, isRight: true };
  });
  return {
    ...{ sheet, seed: SEED, appVersion: "0.1.0", startedAt: "2026-11-25T08:00:00.000Z", worked_ms: 3_000_000 },
    ...{ pauses: 0, interruptions: 1, tries, answers, ended: "finished" },
  };
}

const FACTS = factsOf(SHEET);

/** Checks facts as a record that is marked and hashed right: only what they say can be wrong. */
async function problemsOf(facts: SittingFacts): Promise<readonly string[]> {
  const record: SittingRecord = sittingRecord(facts);
  const check = checkedInWords(checkRecord(record, recordHash(record), "0.1.0"));
  expect(check).toMatchObject({ isUnchanged: true, isMarkedRight: true, hasSameProfiles: true });
  expect(check.fitsSheet).toBe(check.problems.length === 0);
  expect(check.unheld).toEqual([]);
  return check.problems;
}

const { tries, answers } = FACTS;
const dialed = tries.findIndex(({ kind }) => kind === "dialing");
const changed = tries.findIndex(({ kind }) => kind === "change");
const [first, second] = tries;
const [asked] = answers;
if (first === undefined || second === undefined || asked === undefined) throw new Error("the sheet gives too little");
const other = SHIPPED_QUESTIONS.find(({ id }) => answers.every(({ questionId }) => questionId !== id));

describe("a record that fits its sheet", () => {
  test("has no problem", async () => {
    expect(await problemsOf(FACTS)).toEqual([]);
  });

  test.each<[string, Partial<SittingFacts>]>([
    ["broken off after some tries", { tries: tries.slice(0, 2), answers: [], ended: "broken-off" }],
    ["broken off before any", { tries: [], answers: [], ended: "broken-off" }],
    ["broken off at a question", { answers: answers.slice(0, 1), ended: "broken-off" }],
    [
      "a wrong answer recorded as wrong",
      { answers: [{ ...asked, choice: asked.choice === 0 ? 1 : 0, isRight: false }, ...answers.slice(1)] },
    ],
    [
      "a try lost to a reload",
      {
        tries: tries.map((one, k) =>
          k === dialed ? lostTry(one, planTries(SHEET, seededChance(SEED))[k] ?? { ...one, combination: null }) : one,
        ),
      },
    ],
  ])("%s: no problem either", async (_, more) => {
    expect(await problemsOf({ ...FACTS, ...more })).toEqual([]);
  });
});

describe("a record that was changed and hashed and marked anew is found out", () => {
  test.each<[string, Partial<SittingFacts>, RegExp]>([
    ["two tries in the place of each other", { tries: tries.with(0, second).with(1, first) }, /^Try 1 is not the one/],
    ["another seed", { seed: 12 }, /^Try \d is not the one that sheet and seed lead to/],
    [
      "another combination dialed",
      { tries: tries.with(dialed, { ...dialingTry(), ...tries[dialed], combination: [1, 2, 3] } as never) },
      new RegExp(`^Try ${dialed + 1} is not`),
    ],
    [
      "another combination set",
      { tries: tries.with(changed, { ...changeTry(), ...tries[changed], combination: [1, 2, 3] } as never) },
      new RegExp(`^Try ${changed + 1} is not`),
    ],
    [
      "a try of another kind",
      {
        tries: tries.with(
          dialed,
          handoverTry({ station: tries[dialed]?.station ?? 0, repetition: tries[dialed]?.repetition ?? 1 }),
        ),
      },
      new RegExp(`^Try ${dialed + 1} is not`),
    ],
    ["a try made twice", { tries: [...tries, first] }, /^The sheet has 6 tries, but 7 are on record/],
    ["a bad try left out", { tries: tries.slice(1) }, /^It is recorded as finished with 5 of 6 tries/],
    [
      "a bad try left out and the sitting broken off",
      { tries: tries.slice(1), answers: [], ended: "broken-off" },
      /^Try \d is not/,
    ],
    [
      "a wrong answer called right",
      { answers: answers.with(0, { ...asked, choice: asked.choice === 0 ? 1 : 0 }) },
      /^Answer 1 is recorded as right, but by the question bank it is wrong/,
    ],
    [
      "a right answer called wrong",
      { answers: answers.with(0, { ...asked, isRight: false }) },
      /^Answer 1 is recorded as wrong, but by the question bank it is right/,
    ],
    [
      "an easier question",
      { answers: answers.with(1, { questionId: other?.id ?? "", choice: other?.answer ?? 0, isRight: true }) },
      /^Answer 2 is to question ".*", which sheet and seed do not lead to/,
    ],
    [
      "a choice that is none",
      { answers: answers.with(2, { ...(answers[2] ?? asked), choice: 9, isRight: false }) },
      /^Answer 3 takes choice 9/,
    ],
    ["an answer too many", { answers: [...answers, asked] }, /^The sheet asks 3 questions, but 4 answers/],
    ["an answer left out", { answers: answers.slice(0, 2) }, /^It is recorded as finished with 2 of 3 answers/],
    [
      "answers before the last try",
      { tries: tries.slice(0, 3), ended: "broken-off" },
      /^There are answers on record, but questions come only/,
    ],
    ["pauses that are not allowed", { pauses: 2 }, /^There are pauses \(2\) on record/],
    ["a seed that the sheet does not set", { sheet: { ...SHEET, seed: 3 } }, /^The seed is 11, but the sheet sets 3/],
    [
      "a reload that ends it",
      { sheet: { ...SHEET, sitting: { ...SITTING, onReload: "broken-off" } } },
      /^It went on after a reload/,
    ],
    [
      "more tries lost than reloads",
      { interruptions: 0, tries: tries.with(0, { ...first, isBrokenOff: true }) },
      /^Tries lost to a reload: 1; reloads on record: 0/,
    ],
    ["time up without a time", { ended: "time" }, /^It is recorded as ended because time was up/],
    [
      "more questions than the bank has",
      {
        sheet: {
          ...SHEET,
          sitting: { ...SITTING, questions: { topics: [{ topic: "zeroing", count: 500 }], passMark: 1 } },
        },
      },
      /^The choice of the questions cannot be made again from the sheet/,
    ],
  ])("%s", async (_, more, words) => {
    const problems = await problemsOf({ ...FACTS, ...more });
    expect(problems).toContainEqual(expect.stringMatching(words));
  });
});

describe("a record that another version made", () => {
  const facts: SittingFacts = { ...FACTS, appVersion: "0.0.9" };
  const checked = async (record: SittingRecord, hash?: string) =>
    checkedInWords(checkRecord(record, hash ?? recordHash(record), "0.1.0"));

  test("is sound where it fits this version too", async () => {
    expect(await checked(sittingRecord(facts))).toMatchObject({ problems: [], unheld: [] });
  });

  test("is not accused of other tries, answers, marks and locks; they are told beside, with the reason", async () => {
    const record = sittingRecord({ ...facts, seed: 12 });
    const profileHashes = record.profileHashes.map(() => "0".repeat(64));
    const marking = { ...record.marking, verdict: "fail" as const };
    const { problems, unheld } = await checked({ ...record, profileHashes, marking });
    expect(problems).toEqual([]);
    expect(unheld[0]).toMatch(/^Version 0\.0\.9 made it, and this is version 0\.1\.0:.*not from the record/);
    const differs = [/^The marks/, /^A lock/, /^Try \d is not/, /^Answer \d is to question/];
    expect(unheld.slice(1)).toEqual(differs.map((words) => expect.stringMatching(words)));
  });

  test("is not accused of the words that its version had for the same marks", async () => {
    const record = sittingRecord(facts);
    const marks = record.marking.marks.map((mark) => ({ ...mark, says: "as it was said then" }));
    const marking = { ...record.marking, reasons: ["as it was then"], marks };
    expect(await checked({ ...record, marking })).toMatchObject({ isMarkedRight: true, problems: [], unheld: [] });
  });

  test("is found out by its hash and by the rules of its own sheet all the same", async () => {
    const record = sittingRecord({ ...facts, pauses: 2 });
    const { problems, unheld } = await checked(record, "0".repeat(64));
    expect(problems).toEqual([
      expect.stringMatching(/^The record is not the one/),
      expect.stringMatching(/^There are pauses/),
    ]);
    expect(unheld).toEqual([]);
  });
});
