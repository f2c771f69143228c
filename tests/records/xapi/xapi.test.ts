import fc from "fast-check";
import { describe, expect, test } from "vitest";
import * as z from "zod";
import { SHIPPED_QUESTIONS } from "../../../src/drill/questions/shippedQuestions";
import { sheetSha256 } from "../../../src/drill/sheet/sheetFingerprint";
import { demoLogbook } from "../../../src/progress/demo/demoLogbook";
import { readLogbookFile, writeLogbookFile } from "../../../src/records/file/logbookFile";
import { type LogbookContents, NO_CONTENTS } from "../../../src/records/logbookContents";
import { answersParts } from "../../../src/records/xapi/sittingStatements";
import { DNS_NAMESPACE, uuid5 } from "../../../src/records/xapi/uuid5";
import { xapiStatements } from "../../../src/records/xapi/xapiStatements";
import { keptRecord, keptSitting } from "../../support/keptRecord";
import { aJob, anAttempt, aPerson, contents, NOON } from "../../support/logbookRecords";
import { dialingStation, testSheet } from "../../support/testSheet";
import { triesRight } from "../../support/testTries";

/*
 * A statement as the xAPI specification 1.0.3, part two, has it (the parts that are written here): 2.3.1 id, 2.4.2 actor,
 * 2.4.3 verb, 2.4.4.1 activity and interaction, 2.4.5 result and score, 2.4.6 context, 4.1 extensions, 4.2 language maps,
 * 4.4 uuids, 4.5 timestamps, 4.6 durations. Unknown properties are refused, as 2.2 asks.
 */
const iri = z.string().regex(/^[a-z][a-z0-9+.-]*:[^\s<>"{}|\\^`]+$/i);
const uuid = z.string().regex(/^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
const wellFormed = z.string().refine((text) => !/\p{Cs}/u.test(text));
const languageMap = z.record(z.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/), wellFormed);
const extensions = z.record(iri, z.unknown());
const component = z.strictObject({ id: z.string().regex(/^[^\s,[\]]+$/), description: languageMap });
const activitySchema = z.strictObject({
  objectType: z.literal("Activity"),
  id: iri,
  definition: z
    .strictObject({
      type: iri,
      name: languageMap,
      description: languageMap.optional(),
      interactionType: z.enum(["choice"]).optional(),
      correctResponsesPattern: z.array(z.string()).optional(),
      choices: z.array(component).optional(),
    })
    .refine(({ choices, correctResponsesPattern, interactionType }) =>
      // Both belong to an interaction alone, and the right responses are among the choices.
      interactionType === undefined
        ? choices === undefined && correctResponsesPattern === undefined
        : (correctResponsesPattern ?? []).every((right) => choices?.some(({ id }) => id === right) === true),
    ),
});
const score = z
  .strictObject({ scaled: z.number().min(-1).max(1), raw: z.number(), min: z.number(), max: z.number() })
  .refine(({ raw, min, max }) => min < max && raw >= min && raw <= max);
const statementSchema = z.strictObject({
  id: uuid,
  actor: z.strictObject({
    objectType: z.literal("Agent"),
    name: wellFormed,
    account: z.strictObject({ homePage: iri, name: z.string().min(1) }),
  }),
  verb: z.strictObject({ id: iri, display: languageMap }),
  object: activitySchema,
  result: z.strictObject({
    score: score.optional(),
    success: z.boolean().optional(),
    completion: z.boolean().optional(),
    response: z.string().optional(),
    duration: z
      .string()
      .regex(/^PT\d+(\.\d{1,2})?S$/)
      .optional(),
    extensions: extensions.optional(),
  }),
  context: z.strictObject({
    registration: uuid.optional(),
    contextActivities: z.strictObject({ parent: z.array(activitySchema).min(1) }).optional(),
    platform: z.string(),
    language: z.string().regex(/^[a-z]{2}(-[A-Z]{2})?$/),
  }),
  timestamp: z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(\.\d+)?Z$/),
});

test("a uuid of version 5 is the one that another implementation makes", () => {
  // The module uuid of Python 3: uuid5(NAMESPACE_DNS, "www.example.com") and uuid5(NAMESPACE_DNS, "gatefall.example").
  expect(uuid5(DNS_NAMESPACE, "www.example.com")).toBe("2ed6657d-e927-568b-95e1-2665a8aea6a2");
  expect(uuid5(DNS_NAMESPACE, "gatefall.example")).toBe("8f478fac-dd0e-5563-8719-a5a4a77bd571");
});

const demo = demoLogbook(3, NOON);
const NOTHING = { records: NO_CONTENTS.records, traces: new Map<string, Uint8Array>() };
const VERSION = "0.1.0";
const statementsOf = (book: LogbookContents) => xapiStatements(book, VERSION);
const noMarks = testSheet({ stations: [dialingStation({ repetitions: 5 })] });
const ended = [
  keptSitting("s1"),
  keptSitting("s2", { tries: triesRight(1, 5) }),
  keptSitting("s3", { sheet: noMarks }),
  keptSitting("s5", { ended: "broken-off", tries: triesRight(2, 2) }),
];
const failedOne = keptSitting("s7", { tries: triesRight(2, 5) });
const forged = [
  // What is stored beside the record says "passed"; the record says otherwise.
  { ...failedOne, verdict: "passed" as const },
  // The record itself was changed under its old hash.
  {
    ...failedOne,
    id: "s8",
    body: JSON.parse(JSON.stringify(failedOne.body).replaceAll('"opened":false', '"opened":true')),
  },
];

describe("xAPI statements", () => {
  const stamp = { createdAt: NOON, updatedAt: NOON + 1000, personId: "tavro" };
  const zeroing = { ...stamp, id: "z", startedAt: NOON, profileId: "dial-encoder", readings: [] };
  const sitting = { ...stamp, startedAt: NOON, title: "Friday", body: {} };
  const uuid = "11111111-2222-4333-8444-555555555555";
  const statements = statementsOf({
    records: {
      ...NO_CONTENTS.records,
      people: [aPerson("tavro", { name: "Tavro" })],
      attempts: [anAttempt(uuid, { duration_ms: 41_236, opened: false })],
      zeroings: [
        { ...zeroing, outcome: "zero-set" },
        { ...zeroing, id: "z2", outcome: "broken-off" },
      ],
      jobs: [aJob("j", { kind: "trouble", isRight: false, missed: ["size"] })],
      sittings: [
        ...ended,
        { ...sitting, id: "s4", state: "running" },
        // Nothing is stated of what no record stands behind.
        { ...sitting, id: "s6", state: "finished", verdict: "passed" },
        ...forged,
      ],
      declarations: [{ ...stamp, id: "d", profileId: "three-wheel", exercise: "open", declaredAt: NOON, attempts: 12 }],
    },
    traces: new Map(),
  });
  const word = (verb: { readonly id: string }) => verb.id.split("/").at(-1);

  test("have ADL's verbs where one fits, and ours under an example domain", () => {
    expect(statements.map(({ verb }) => word(verb)).sort()).toEqual(
      [
        "attempted",
        "attempted",
        "completed",
        "failed",
        "failed",
        "mastered",
        "passed",
        "terminated",
        "terminated",
        "zeroed",
      ].sort(),
    );
    for (const { verb } of statements) {
      expect(verb.id).toMatch(/^(http:\/\/adlnet\.gov\/expapi|https:\/\/gatefall\.example\/xapi)\/verbs\/[a-z]+$/);
    }
  });

  test("say of an attempt who, what, when, and how it went", () => {
    const found = statements.find(({ result }) => result.duration === "PT41.24S");
    expect(found).toEqual({
      id: found?.id,
      actor: {
        objectType: "Agent",
        name: "Tavro",
        account: { homePage: "https://gatefall.example/local", name: "tavro" },
      },
      verb: { id: "http://adlnet.gov/expapi/verbs/attempted", display: { "en-US": "attempted" } },
      object: {
        objectType: "Activity",
        id: "https://gatefall.example/xapi/activities/three-wheel/open",
        definition: { type: "http://adlnet.gov/expapi/activities/simulation", name: { "en-US": "open, three-wheel" } },
      },
      result: {
        success: false,
        completion: true,
        duration: "PT41.24S",
        extensions: {
          "https://gatefall.example/xapi/extensions/stop-errors": [0.25, -0.5, 0],
          "https://gatefall.example/xapi/extensions/faults": [],
          "https://gatefall.example/xapi/extensions/help": "silent",
          "https://gatefall.example/xapi/extensions/conditions": [],
        },
      },
      context: { platform: "Gatefall", language: "en-US" },
      timestamp: new Date(NOON + 41_236).toISOString(),
    });
  });

  test("say of a job whether it was right, and what was missed", () => {
    const job = statements.find(({ object }) => JSON.stringify(object).includes("three-wheel/trouble"));
    expect(job).toMatchObject({
      result: {
        success: false,
        completion: true,
        duration: "PT240S",
        extensions: { "https://gatefall.example/xapi/extensions/missed": ["size"] },
      },
      timestamp: new Date(NOON + 240_000).toISOString(),
    });
  });

  test("score a sitting by its marks, and claim no success where none is shown", () => {
    const of = (wanted: string) => statements.find(({ verb }) => word(verb) === wanted)?.result;
    expect(of("passed")).toMatchObject({ success: true, completion: true, duration: "PT180S" });
    expect(of("passed")?.score).toEqual({ scaled: 1, raw: 1, min: 0, max: 1 });
    expect(of("failed")?.score).toEqual({ scaled: 0, raw: 0, min: 0, max: 1 });
    expect(of("completed")).not.toHaveProperty("success");
    expect(of("completed")).not.toHaveProperty("score");
  });

  test("have one activity for all sittings of a sheet, whatever it is titled, and another where it counts otherwise", async () => {
    const sheet = testSheet({ stations: [dialingStation({ repetitions: 5, passMarks: { firstTime: 4 } })] });
    const eased = testSheet({ stations: [dialingStation({ repetitions: 5, passMarks: { firstTime: 2 } })] });
    const sittings = [
      keptSitting("a", { sheet }),
      keptSitting("b", { sheet: { ...sheet, title: "Friday, translated" } }),
      keptSitting("c", { sheet: eased }),
    ];
    const all = statementsOf({ ...NOTHING, records: { ...NOTHING.records, sittings } });
    const activities = all.map(({ object }) => object.id);
    expect(new Set(activities).size).toBe(2);
    expect(activities.filter((one) => one.endsWith(`/sheets/${sheetSha256(sheet)}`))).toHaveLength(2);
  });

  test("tie tries and answers to their sitting by registration and parent, questions as interactions", async () => {
    const [question] = SHIPPED_QUESTIONS;
    if (question === undefined) throw new Error("the bank has a question");
    const wrong = (question.answer + 1) % question.choices.length;
    const stated = {
      sitting: keptSitting("s"),
      outcome: "passed" as const,
      sheet: {
        objectType: "Activity",
        id: "https://gatefall.example/x",
        definition: { type: "https://x.example", name: { "en-US": "x" } },
      } as const,
      record: keptRecord({
        answers: [
          { questionId: question.id, choice: wrong, isRight: false },
          { questionId: "gone-01", choice: 0, isRight: true },
        ],
      }).record,
    };
    const [answer, gone] = answersParts(stated);
    expect(answer).toMatchObject({
      object: {
        id: `https://gatefall.example/xapi/activities/questions/${question.id}`,
        definition: {
          type: "http://adlnet.gov/expapi/activities/cmi.interaction",
          interactionType: "choice",
          description: { "en-US": question.asks },
          correctResponsesPattern: [`choice-${question.answer + 1}`],
        },
      },
      result: { success: false, response: `choice-${wrong + 1}` },
      sittingId: "s",
    });
    expect(answer?.object.definition.choices).toHaveLength(question.choices.length);
    expect(gone?.object.definition).not.toHaveProperty("choices");

    const sitting = keptSitting("s");
    const attempts = [anAttempt("s:1", { sittingId: "s" }), anAttempt("free")];
    const all = statementsOf({ ...NOTHING, records: { ...NOTHING.records, sittings: [sitting], attempts } });
    const [own, tried, free] = ["passed", "attempted"].flatMap((verb) => all.filter((one) => word(one.verb) === verb));
    const inIt = [tried, free].find((one) => one?.context.registration !== undefined);
    const apart = [tried, free].find((one) => one?.context.registration === undefined);
    expect(inIt?.context.registration).toBe(own?.context.registration);
    expect(inIt?.context.contextActivities?.parent.map(({ id }) => id)).toEqual([own?.object.id]);
    expect(own?.context).not.toHaveProperty("contextActivities");
    expect(apart?.context).toEqual({ platform: "Gatefall", language: "en-US" });
  });

  test("duplicate nothing when they are uploaded again, from this or another device", () => {
    const book = { ...demo, records: { ...demo.records, sittings: ended } };
    const ids = statementsOf(book).map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const again = { ...book, records: { ...book.records, attempts: book.records.attempts.toReversed() } };
    expect(statementsOf(again)).toEqual(statementsOf(book));
    // An attempt that was under way at the first upload is another statement when it has ended: none is ever changed.
    const [under] = statementsOf(contents([], [anAttempt("a", { isUnfinished: true })]));
    const [over] = statementsOf(contents([], [anAttempt("a")]));
    expect(under?.id).not.toBe(over?.id);
  });

  test("are as the standard has them", () => {
    for (const one of [...statements, ...statementsOf({ ...demo, records: { ...demo.records, sittings: ended } })]) {
      expect(statementSchema.safeParse(one).error, JSON.stringify(one)).toBeUndefined();
    }
    for (const broken of [
      { id: "no-uuid" },
      { timestamp: "yesterday" },
      { verb: { id: "attempted" } },
      { result: { duration: "3 s" } },
      { result: { score: { scaled: 2, raw: 1, min: 0, max: 1 } } },
      { surprise: 1 },
    ]) {
      expect(statementSchema.safeParse({ ...statements[0], ...broken }).success, JSON.stringify(broken)).toBe(false);
    }
  });

  test("of a whole logbook are in order of time", () => {
    const times = statementsOf(demo).map(({ timestamp }) => timestamp);
    expect(times).toEqual(times.toSorted());
    expect(times.length).toBeGreaterThan(demo.records.attempts.length);
  });
});

describe("xAPI survives any record that a logbook file may hold", () => {
  const odd = fc.oneof(
    fc.string({ minLength: 1, maxLength: 12 }),
    fc.string({ unit: "binary", minLength: 1, maxLength: 12 }),
    fc.constantFrom("\uD800", "a\uDFFFb", "\u202Egpj", "%", "../..", "a b?#", "=1+1"),
  );
  const moment = fc.oneof(fc.integer({ min: 0, max: 8.64e15 }), fc.constantFrom(0, 8.64e15, NOON));
  const book = fc
    .record({ name: odd, profileId: odd, exercise: odd, title: odd, startedAt: moment, span: moment, word: odd })
    .map(({ name, profileId, exercise, title, startedAt, span, word }): LogbookContents => {
      const stamp = { createdAt: startedAt, updatedAt: startedAt, personId: "tavro", startedAt, profileId };
      const part = contents(
        [aPerson("tavro", { name })],
        [anAttempt("a", { ...stamp, exercise, duration_ms: span, conditions: [word], sittingId: "s" })],
      );
      return {
        ...part,
        records: {
          ...part.records,
          jobs: [aJob("j", { ...stamp, duration_ms: span })],
          zeroings: [{ ...stamp, id: "z", outcome: "not-set", readings: [], details: { sittingId: "s" } }],
          sittings: [{ ...stamp, id: "s", title, state: "finished", verdict: "passed", body: { record: word } }],
          declarations: [{ ...stamp, id: "d", exercise, declaredAt: startedAt, attempts: 3 }],
        },
      };
    });

  test("and states each as the standard has it", () => {
    fc.assert(
      fc.property(book, (any) => {
        // As it comes from a file: what the reader refuses never gets here.
        const read = readLogbookFile(writeLogbookFile(any, NOON));
        const statements = JSON.parse(JSON.stringify(statementsOf(read))) as unknown[];
        expect(statements).toHaveLength(4);
        for (const one of statements) expect(statementSchema.safeParse(one).error, JSON.stringify(one)).toBeUndefined();
      }),
      { numRuns: 300 },
    );
  });
});
