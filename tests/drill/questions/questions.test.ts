import { describe, expect, test } from "vitest";
import { DrillError } from "../../../src/drill/drillError";
import { parseQuestions } from "../../../src/drill/questions/parseQuestions";
import { type Question, SOURCE_STATUSES, surenessText, TOPICS } from "../../../src/drill/questions/question";
import { difficultyText, questionDifficulty } from "../../../src/drill/questions/questionDifficulty";
import { SHIPPED_QUESTIONS } from "../../../src/drill/questions/shippedQuestions";
import { drawQuestions, isAnsweredRight } from "../../../src/drill/sitting/drawQuestions";
import { seededChance } from "../../../src/statistics/chance";

describe("the bank", () => {
  test("has at least a hundred and sixty questions, at least twelve on each topic, ids of their own", () => {
    expect(SHIPPED_QUESTIONS.length).toBeGreaterThanOrEqual(160);
    for (const topic of TOPICS) {
      expect(SHIPPED_QUESTIONS.filter((question) => question.topic === topic).length).toBeGreaterThanOrEqual(12);
    }
    expect(new Set(SHIPPED_QUESTIONS.map(({ id }) => id)).size).toBe(SHIPPED_QUESTIONS.length);
    expect(new Set(SHIPPED_QUESTIONS.map(({ asks }) => asks)).size).toBe(SHIPPED_QUESTIONS.length);
  });

  test.each(SHIPPED_QUESTIONS.map((question) => [question.id, question] as const))(
    "%s has a right choice, a reason, and a source or the word that there is none",
    (_, { answer, choices, explanation, source, sourceStatus, asks }) => {
      expect(choices[answer]).toBeDefined();
      expect(new Set(choices).size).toBe(choices.length);
      expect(explanation).toMatch(/^\S.{15,}[.)]$/);
      expect(asks).toMatch(/[?]$/);
      expect(source.includes("common practice, no source")).toBe(sourceStatus === "none");
    },
  );

  test("no place among the choices gives the answer away", () => {
    const counts = [0, 1, 2, 3].map((place) => SHIPPED_QUESTIONS.filter(({ answer }) => answer === place).length);
    for (const count of counts) expect(count).toBeGreaterThan(SHIPPED_QUESTIONS.length / 8);
    for (const topic of TOPICS) {
      const own = SHIPPED_QUESTIONS.filter((question) => question.topic === topic);
      const most = Math.max(...[0, 1, 2, 3].map((place) => own.filter(({ answer }) => answer === place).length));
      expect(most, topic).toBeLessThanOrEqual(own.length / 2);
    }
  });

  test("the right choice is alone the longest in no more than a third of the questions", () => {
    const isLongest = ({ choices, answer }: Question) =>
      choices.every((choice, k) => k === answer || choice.length < (choices[answer]?.length ?? 0));
    expect(SHIPPED_QUESTIONS.filter(isLongest).length).toBeLessThanOrEqual(SHIPPED_QUESTIONS.length / 3);
  });

  test("nothing is asked about this program", () => {
    const about = /trouble bench|logbook|the form of the record|this app/i;
    for (const { id, asks } of SHIPPED_QUESTIONS) expect(asks, id).not.toMatch(about);
  });

  test("a turn has a direction, and nobody comes from one", () => {
    for (const { id, ...question } of SHIPPED_QUESTIONS) {
      expect(JSON.stringify(question), id).not.toMatch(/from the (right|left)/);
    }
  });

  test("says how sure each source is, and nothing of an edition that was only reported on is called seen", () => {
    for (const { id, source, sourceStatus } of SHIPPED_QUESTIONS) {
      if (/report/.test(source)) expect(sourceStatus, id).toBe("COPY");
      expect(surenessText({ sourceStatus })).toMatch(/\.$/);
    }
    expect(new Set(SOURCE_STATUSES.map((sourceStatus) => surenessText({ sourceStatus }))).size).toBe(5);
  });

  test("no choice stands for all the others", () => {
    for (const { id, choices } of SHIPPED_QUESTIONS) {
      for (const choice of choices) expect(choice, id).not.toMatch(/of the above|of these/i);
    }
  });
});

const sound: Question = {
  id: "one",
  topic: "zeroing",
  asks: "Which?",
  choices: ["a", "b", "c"],
  answer: 1,
  explanation: "Because.",
  source: "common practice, no source",
  sourceStatus: "none",
};

describe("a bank that is not sound gets a sentence", () => {
  test.each([
    { value: [], says: "questions: this must be an object" },
    { value: { version: 2, questions: [] }, says: "version must be 1" },
    {
      value: { version: 1, questions: [{ ...sound, topic: "weather" }] },
      says: 'questions[0].topic must be "turn-counting"',
    },
    { value: { version: 1, questions: [{ ...sound, answer: 3 }] }, says: "questions[0].answer must be below 3" },
    { value: { version: 1, questions: [{ ...sound, answer: -1 }] }, says: "questions[0].answer must be the index" },
    { value: { version: 1, questions: [{ ...sound, choices: ["a", "b"] }] }, says: "choices must be a list of 3 to 5" },
    { value: { version: 1, questions: [{ ...sound, choices: ["a", "b", "b"] }] }, says: "the same choice twice" },
    {
      value: { version: 1, questions: [{ ...sound, source: "" }] },
      says: "questions[0].source must be a text that is not empty",
    },
    { value: { version: 1, questions: [sound, sound] }, says: 'questions[1].id: the id "one" is there twice' },
  ])("$says", ({ value, says }) => {
    expect(() => parseQuestions(value)).toThrow(DrillError);
    expect(() => parseQuestions(value)).toThrow(says);
  });
});

describe("drawing", () => {
  const topics = [
    { topic: "egress" as const, count: 5 },
    { topic: "zeroing" as const, count: 12 },
  ];
  const drawn = (seed: number) => drawQuestions(SHIPPED_QUESTIONS, topics, seededChance(seed));

  test("takes as many of each topic as asked, none twice, the same for a seed", () => {
    for (let seed = 0; seed < 50; seed++) {
      const questions = drawn(seed).map(({ question }) => question);
      expect(questions.map(({ topic }) => topic)).toEqual([...Array(5).fill("egress"), ...Array(12).fill("zeroing")]);
      expect(new Set(questions.map(({ id }) => id)).size).toBe(17);
    }
    expect(drawn(3)).toEqual(drawn(3));
    expect(drawn(3)).not.toEqual(drawn(4));
  });

  test("takes any question of a topic as often as another", () => {
    const twelve = SHIPPED_QUESTIONS.filter(({ topic }) => topic === "zeroing");
    const times = new Map(twelve.map(({ id }) => [id, 0]));
    const rounds = 1200;
    for (let seed = 0; seed < rounds; seed++) {
      const [one] = drawQuestions(SHIPPED_QUESTIONS, [{ topic: "zeroing", count: 1 }], seededChance(seed));
      const id = one?.question.id ?? "";
      times.set(id, (times.get(id) ?? 0) + 1);
    }
    const share = 1 / twelve.length;
    for (const count of times.values()) {
      // Five standard errors either way.
      expect(Math.abs(count - rounds * share)).toBeLessThan(5 * Math.sqrt(rounds * share * (1 - share)));
    }
  });

  test("shows the choices in an order of their own, each once, and knows the right one there", () => {
    for (const asked of drawn(9)) {
      expect([...asked.order].sort()).toEqual([...asked.question.choices.keys()]);
      const right = asked.order.filter((_, shown) => isAnsweredRight(asked, shown));
      expect(right).toEqual([asked.question.answer]);
    }
  });

  test("a topic with too few says so", () => {
    const draw = () => drawQuestions([sound], [{ topic: "zeroing", count: 2 }], seededChance(1));
    expect(draw).toThrow("the bank has 1 question on zeroing, and 2 are asked");
  });
});

describe("difficulty from use on this device", () => {
  test("not asked yet is an answer of its own", () => {
    expect(difficultyText(questionDifficulty("one", [{ questionId: "two", isRight: true }]))).toBe("not asked yet");
  });

  test("counts the answers to this question alone, with a Wilson interval", () => {
    const answers = Array.from({ length: 20 }, (_, k) => ({ questionId: "one", isRight: k < 18 }));
    const difficulty = questionDifficulty("one", [...answers, { questionId: "two", isRight: false }]);
    expect(difficulty).toMatchObject({ kind: "asked", asked: 20, right: 18, share: 0.9 });
    expect(difficultyText(difficulty)).toBe("18 of 20 right, 90 % (70 % to 97 %)");
  });
});
