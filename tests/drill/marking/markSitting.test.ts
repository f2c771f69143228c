import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import { markingScheme, schemeAdvice, schemeRows } from "../../../src/drill/marking/markingScheme";
import { type Marking, markSitting, type SittingResults } from "../../../src/drill/marking/markSitting";
import type { TryResult } from "../../../src/drill/marking/tryResult";
import type { DialingMarks, Sheet, Station } from "../../../src/drill/sheet/sheet";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";
import { dialingTry, triesRight, zeroingTry } from "../../support/testTries";

// A loaded machine must not make a property fail.
vi.setConfig({ testTimeout: 60_000 });

const marked = (sheet: Sheet, tries: readonly TryResult[], more: Partial<SittingResults> = {}): Marking =>
  markSitting(markingScheme(sheet), sheet, { tries, answers: [], ended: "finished", ...more });

const sheetOf = (station: Station) => testSheet({ stations: [station] });
const dialed = (passMarks: DialingMarks, repetitions: number, more: object = {}) =>
  sheetOf(dialingStation({ passMarks, repetitions, ...more }));

describe("first-time openings, k of n", () => {
  test.each([
    { right: 8, made: 10, ended: "finished", verdict: "pass", why: "as many as asked" },
    { right: 7, made: 10, ended: "finished", verdict: "fail", why: "one too few" },
    { right: 5, made: 6, ended: "broken-off", verdict: "not shown", why: "the rest could have made it" },
    { right: 3, made: 6, ended: "broken-off", verdict: "fail", why: "the rest could not" },
    { right: 5, made: 6, ended: "time", verdict: "fail", why: "what the time did not allow is missed" },
    { right: 8, made: 8, ended: "broken-off", verdict: "pass", why: "already reached" },
    { right: 0, made: 0, ended: "broken-off", verdict: "not shown", why: "nothing was tried" },
  ] as const)("$right of $made made, $ended: $verdict ($why)", ({ right, made, ended, verdict }) => {
    expect(marked(dialed({ firstTime: 8 }, 10), triesRight(right, made), { ended }).verdict).toBe(verdict);
  });

  // The scenario's sample results of twenty tries: 95 % Wilson intervals, rounded to whole percents.
  test.each([
    { right: 20, interval: "84 % and 100 %" },
    { right: 19, interval: "76 % and 99 %" },
    { right: 17, interval: "64 % and 95 %" },
    { right: 15, interval: "53 % and 89 %" },
    { right: 12, interval: "39 % and 78 %" },
    { right: 11, interval: "34 % and 74 %" },
  ])("$right of 20 says how sure it is: $interval", ({ right, interval }) => {
    const [mark] = marked(dialed({ firstTime: 17 }, 20), triesRight(right, 20)).marks;
    expect(mark?.says).toBe(`${right} of 20 right; at least 17 asked`);
    expect(mark?.sureness).toBe(`the true rate lies between ${interval}`);
    expect(mark?.method).toMatch(/^Wilson, 95 %; by Clopper-Pearson it lies between \d+ % and \d+ %$/);
  });

  test("one try says nothing of a rate, and names no method", () => {
    const [one] = marked(dialed({ firstTime: 1 }, 1), triesRight(1, 1)).marks;
    expect([one?.says, one?.sureness, one?.method]).toEqual(["1 of 1 right; at least 1 asked", "", undefined]);
    const [two] = marked(dialed({ firstTime: 1 }, 2), triesRight(1, 2)).marks;
    expect(two?.sureness).not.toBe("");
  });

  test.each([
    { why: "over the time limit", fields: { time_ms: 60_001 } },
    { why: "broken off", fields: { isBrokenOff: true } },
    { why: "not opened", fields: { opened: false } },
  ])("a try $why does not count", ({ fields }) => {
    const sheet = dialed({ firstTime: 1 }, 1, { timeLimit_s: 60 });
    expect(marked(sheet, [dialingTry({ time_ms: 60_000 })]).verdict).toBe("pass");
    expect(marked(sheet, [dialingTry(fields)]).verdict).toBe("fail");
  });

  test.each([
    { faults: [], verdict: "pass", why: "no fault" },
    { faults: [{ code: "ran-past", number: 2, size: 2 }], verdict: "fail", why: "a fault at a number dialed" },
    { faults: [{ code: "ran-past", number: 3, size: 2 }], verdict: "pass", why: "a fault at a number not asked for" },
    { faults: [{ code: "not-drawn", number: 2, size: 9 }], verdict: "pass", why: "nothing is drawn" },
  ] as const)("where two numbers only are dialed: $why", ({ faults, verdict }) => {
    const sheet = dialed({ firstTime: 1 }, 1, { upTo: 2 });
    expect(marked(sheet, [dialingTry({ opened: false, faults })]).verdict).toBe(verdict);
  });
});

test.each([
  { right: 22, of: 22, verdict: "pass" },
  { right: 21, of: 22, verdict: "not shown" },
  { right: 12, of: 22, verdict: "fail" },
])("a claim of 90 % with 90 % confidence: $right of $of is $verdict", ({ right, of, verdict }) => {
  const sheet = dialed({ claim: { rate: 0.9, confidence: 0.9 } }, of);
  expect(marked(sheet, triesRight(right, of)).verdict).toBe(verdict);
});

/** Tries whose stops go wrong by turns by `center - reach` and `center + reach`. */
const alternating = (center: number, reach: number, of: number) =>
  Array.from({ length: of }, (_, k) => {
    const [a, b] = k % 2 === 0 ? [center - reach, center + reach] : [center + reach, center - reach];
    return dialingTry({ repetition: k + 1, stopErrors: [a, b, null] });
  });

describe("stop errors", () => {
  test.each([
    { center: 0, of: 20, verdict: "pass" },
    { center: 0.3, of: 20, verdict: "not shown" },
    { center: 1, of: 20, verdict: "fail" },
    { center: 0, of: 1, verdict: "not shown" },
  ])("mean of $center over $of tries, within 0.3 asked: $verdict", ({ center, of, verdict }) => {
    const { marks } = marked(dialed({ stopErrorBias: 0.3 }, of), alternating(center, 0.25, of));
    expect(marks[0]?.verdict).toBe(verdict);
    expect(marks[0]?.value).toBeCloseTo(center, 12);
  });

  test.each([
    { reach: 0.25, verdict: "pass" },
    { reach: 0.39, verdict: "pass" },
    { reach: 0.41, verdict: "not shown" },
    { reach: 0.5, verdict: "not shown" },
    { reach: 1, verdict: "fail" },
    { reach: 0, verdict: "pass" },
  ])("spread of $reach over 40 stops, 0.5 allowed: $verdict", ({ reach, verdict }) => {
    const { marks } = marked(dialed({ stopErrorSpread: 0.5 }, 20), alternating(2, reach, 20));
    expect(marks[0]?.verdict).toBe(verdict);
  });

  test("none measured, nothing shown", () => {
    const tries = triesRight(3, 3, { stopErrors: [null, null, null] });
    const { verdict, marks } = marked(dialed({ stopErrorBias: 1, stopErrorSpread: 1 }, 3), tries);
    expect([verdict, marks[0]?.value, marks[0]?.says]).toEqual(["not shown", null, "not enough to judge by yet"]);
  });
});

describe("faults and time", () => {
  const fault = [{ code: "ran-past" as const, number: 1, size: 2 }];
  test.each([
    { faulty: 1, made: 5, verdict: "pass" },
    { faulty: 2, made: 5, verdict: "fail" },
    { faulty: 1, made: 4, verdict: "not shown" },
  ])("$faulty faulty of $made made, 5 asked, one allowed: $verdict", ({ faulty, made, verdict }) => {
    const tries = Array.from({ length: made }, (_, k) =>
      dialingTry({ repetition: k, faults: k < faulty ? fault : [] }),
    );
    expect(marked(dialed({ faultyTries: 1 }, 5), tries, { ended: "broken-off" }).verdict).toBe(verdict);
  });

  test.each([
    { lost: 1, faulty: 0, verdict: "pass", says: "0 of 5 tries with a fault, 1 lost to a reload; at most 1 allowed" },
    {
      lost: 1,
      faulty: 1,
      verdict: "not shown",
      says: "1 of 5 tries with a fault, 1 lost to a reload; at most 1 allowed",
    },
    {
      lost: 2,
      faulty: 0,
      verdict: "not shown",
      says: "0 of 5 tries with a fault, 2 lost to a reload; at most 1 allowed",
    },
    { lost: 1, faulty: 2, verdict: "fail", says: "2 of 5 tries with a fault, 1 lost to a reload; at most 1 allowed" },
  ])(
    "a lost try is no try with a fault, and leaves open what it may have had: $says",
    ({ lost, faulty, verdict, says }) => {
      const tries = Array.from({ length: 5 }, (_, k) =>
        dialingTry({ repetition: k + 1, isBrokenOff: k < lost, faults: k >= 5 - faulty ? fault : [] }),
      );
      const [mark] = marked(dialed({ faultyTries: 1 }, 5), tries).marks;
      expect([mark?.verdict, mark?.says]).toEqual([verdict, says]);
    },
  );

  test.each([
    { times: [20, 40], verdict: "pass", value: 30 },
    { times: [20, 41], verdict: "fail", value: 30.5 },
    { times: [20], verdict: "not shown", value: 20 },
  ])("times of $times s, 30 on average asked: $verdict", ({ times, verdict, value }) => {
    const tries = times.map((time_s, k) => dialingTry({ repetition: k + 1, time_ms: time_s * 1000 }));
    const { marks } = marked(dialed({ meanTime_s: 30 }, 2), tries, { ended: "broken-off" });
    expect([marks[0]?.verdict, marks[0]?.value]).toEqual([verdict, value]);
  });
});

describe("zeros", () => {
  const unclear = zeroingTry({ verdicts: { right: "accept", left: "not shown yet" } });
  test.each([
    { tries: [zeroingTry(), zeroingTry()], verdict: "pass", why: "both are good" },
    {
      tries: [zeroingTry(), zeroingTry({ verdicts: { right: "reject", left: "accept" } })],
      verdict: "fail",
      why: "one side bad",
    },
    { tries: [zeroingTry(), unclear], verdict: "not shown", why: "one side open" },
    {
      tries: [zeroingTry(), zeroingTry({ verdicts: { right: "accept", left: null } })],
      verdict: "not shown",
      why: "a series not closed",
    },
    { tries: [zeroingTry(), zeroingTry({ isBrokenOff: true })], verdict: "fail", why: "a try lost" },
  ])("$verdict: $why", ({ tries, verdict }) => {
    expect(marked(sheetOf(zeroingStation({ passMarks: { zeroed: 2 } })), tries).verdict).toBe(verdict);
  });

  test.each([
    { refused: [1, 2], verdict: "pass" },
    { refused: [2, 2], verdict: "fail" },
    { refused: [1], verdict: "not shown" },
  ])("$refused refused, three allowed: $verdict", ({ refused, verdict }) => {
    const tries = refused.map((count) => zeroingTry({ refused: count }));
    const sheet = sheetOf(zeroingStation({ passMarks: { refused: 3 } }));
    expect(marked(sheet, tries, { ended: "broken-off" }).verdict).toBe(verdict);
  });
});

test.each([
  { answers: [true, true, false], verdict: "pass" },
  { answers: [true, false, false], verdict: "fail" },
  { answers: [true, false], verdict: "not shown" },
])("questions answered $answers, two of three asked: $verdict", ({ answers, verdict }) => {
  const questions = { topics: [{ topic: "egress" as const, count: 3 }], passMark: 2 };
  const sitting = { pauseAllowed: false, onReload: "resume" as const, clockHideable: true, questions };
  expect(marked(testSheet({ sitting }), [], { answers, ended: "broken-off" }).verdict).toBe(verdict);
});

describe("the verdict of the whole", () => {
  test("fails where one mark fails, and says which in words", () => {
    const sheet = dialed({ firstTime: 2, meanTime_s: 10 }, 2, { title: "Three wheels" });
    const { verdict, reasons } = marked(sheet, triesRight(2, 2));
    expect(verdict).toBe("fail");
    expect(reasons).toEqual([
      "Three wheels: A try takes at most 10 s on average. Missed: 30.0 s a try on average, over 2; at most 10 s asked.",
    ]);
  });

  test("is not shown where nothing fails and something is open, and where nothing is asked", () => {
    const sheet = dialed({ firstTime: 2, claim: { rate: 0.9, confidence: 0.9 } }, 2);
    const { verdict, reasons } = marked(sheet, triesRight(2, 2));
    expect(verdict).toBe("not shown");
    expect(reasons).toEqual([
      "Station 1: The tries show 90 % with 90 % confidence. Not shown: 2 of 2 right: a rate of 90 % is not shown with 90 % confidence.",
    ]);
    expect(marked(dialed({}, 2), triesRight(2, 2))).toEqual({
      verdict: "not shown",
      reasons: ["This sheet asks for no marks."],
      marks: [],
    });
  });

  test("one more opening never makes it worse", () => {
    const order = { fail: 0, "not shown": 1, pass: 2 };
    const of = fc.integer({ min: 1, max: 40 });
    fc.assert(
      fc.property(of, fc.nat(40), fc.nat(40), fc.constantFrom(0.5, 0.8, 0.9), (n, a, b, rate) => {
        const sheet = dialed({ firstTime: Math.min(b, n), claim: { rate, confidence: 0.9 } }, n);
        const right = a % n;
        const verdicts = [right, right + 1].map((count) => order[marked(sheet, triesRight(count, n)).verdict]);
        expect(verdicts[1]).toBeGreaterThanOrEqual(verdicts[0] as number);
      }),
    );
  });
});

test("the scheme of every sample sheet prints as rows of text, each mark with what is asked and how it is judged", () => {
  for (const sheet of SHIPPED_SHEETS) {
    const scheme = markingScheme(sheet);
    const rows = schemeRows(scheme);
    expect(rows).toHaveLength(scheme.criteria.length + 1);
    for (const row of rows) {
      expect(row).toHaveLength(3);
      for (const cell of row) expect(cell).toMatch(/^(?!.*(undefined|NaN)).{3,}$/);
    }
  }
});

test("advice tells how many tries the claims need", () => {
  const friday = SHIPPED_SHEETS.find(({ title }) => title === "Friday sitting") as Sheet;
  expect(schemeAdvice(markingScheme(friday))[0]).toBe("22 of 22 shows 90 % with 90 % confidence.");
});
