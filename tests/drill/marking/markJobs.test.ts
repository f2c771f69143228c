import { describe, expect, test } from "vitest";
import { PROOFS_WANTED } from "../../../src/drill/marking/jobRule";
import { lostTry } from "../../../src/drill/marking/lostTry";
import { markingScheme, schemeRows } from "../../../src/drill/marking/markingScheme";
import { type Marking, markSitting, type SittingResults } from "../../../src/drill/marking/markSitting";
import { hasFault, isRight, type TryResult } from "../../../src/drill/marking/tryResult";
import type { Station } from "../../../src/drill/sheet/sheet";
import { FIT_CHECKS } from "../../../src/fitting/fitChecks";
import type { FitFault } from "../../../src/fitting/fitFaultCode";
import {
  changeStation,
  dialingStation,
  fittingStation,
  handoverStation,
  inspectionStation,
  serviceStation,
  testSheet,
  troubleStation,
  zeroingStation,
} from "../../support/testSheet";
import {
  changeTry,
  dialingTry,
  fittingTry,
  handoverTry,
  inspectionTry,
  serviceTry,
  triesRight,
  troubleTry,
  zeroingTry,
} from "../../support/testTries";

const marked = (
  station: Station,
  tries: readonly TryResult[],
  ended: SittingResults["ended"] = "finished",
): Marking => {
  const sheet = testSheet({ stations: [station] });
  return markSitting(markingScheme(sheet), sheet, { tries, answers: [], ended });
};

const fault = [{ code: "number-set-off", size: 0.8 }];
const clean = [...Array(4).keys()].map((k) => changeTry({ repetition: k + 1 }));

describe("what counts as right", () => {
  test.each([
    { one: changeTry(), station: changeStation(), isGood: true, why: "true and proved" },
    { one: changeTry({ faults: fault }), station: changeStation(), isGood: true, why: "a fault on the way, mended" },
    {
      one: changeTry({ proofs: PROOFS_WANTED - 1 }),
      station: changeStation(),
      isGood: false,
      why: "a proof is missing",
    },
    { one: changeTry({ outcome: "off" }), station: changeStation(), isGood: false, why: "opens, not as written" },
    { one: changeTry({ outcome: "spoiled" }), station: changeStation(), isGood: false, why: "spoiled" },
    {
      one: changeTry({ outcome: "unchanged" }),
      station: changeStation(),
      isGood: false,
      why: "proved, but the old one",
    },
    { one: changeTry({ time_ms: 240_001 }), station: changeStation({ timeLimit_s: 240 }), isGood: false, why: "late" },
    { one: troubleTry(), station: troubleStation(), isGood: true, why: "named right" },
    { one: troubleTry({ sizeError: 3 }), station: troubleStation(), isGood: true, why: "its size is another mark" },
    { one: troubleTry({ isNamedRight: false }), station: troubleStation(), isGood: false, why: "guessed" },
    { one: handoverTry({ undone: 2 }), station: handoverStation(), isGood: true, why: "clean" },
    { one: handoverTry({ isHandedOver: false }), station: handoverStation(), isGood: false, why: "never signed" },
    { one: handoverTry({ missing: ["record"] }), station: handoverStation(), isGood: false, why: "no record" },
    { one: handoverTry({ faults: [{ code: "shut-in" }] }), station: handoverStation(), isGood: false, why: "a fault" },
    {
      one: fittingTry({ skipped: ["bolt"] }),
      station: fittingStation(),
      isGood: true,
      why: "nothing wrong, a check skipped",
    },
    {
      one: fittingTry({ faults: [{ code: "rubs" }] }),
      station: fittingStation(),
      isGood: false,
      why: "a dial that rubs",
    },
    { one: fittingTry({ declared: null }), station: fittingStation(), isGood: false, why: "never said to be fitted" },
    { one: fittingTry({ declared: "spent" }), station: fittingStation(), isGood: false, why: "spoiled parts" },
    {
      one: inspectionTry({ skipped: ["bolt"] }),
      station: inspectionStation(),
      isGood: true,
      why: "what is wrong is named, another check skipped",
    },
    { one: inspectionTry({ named: [] }), station: inspectionStation(), isGood: false, why: "a fault overlooked" },
    {
      one: inspectionTry({ named: ["rubs", "bolt-binds"] }),
      station: inspectionStation(),
      isGood: false,
      why: "a fault named that is not there",
    },
    {
      one: inspectionTry({ skipped: ["turn-round", "push-pull"] }),
      station: inspectionStation(),
      isGood: false,
      why: "a guess",
    },
    { one: inspectionTry({ faults: [], named: [] }), station: inspectionStation(), isGood: true, why: "nothing wrong" },
    {
      one: inspectionTry({ faults: [], named: null }),
      station: inspectionStation(),
      isGood: false,
      why: "no answer about a good fit",
    },
    { one: zeroingTry(), station: zeroingStation(), isGood: true, why: "both sides shown" },
    { one: dialingTry({ opened: false }), station: dialingStation(), isGood: false, why: "not opened" },
  ])("$one.kind, $why: $isGood", ({ one, station, isGood }) => {
    expect(isRight(one, station)).toBe(isGood);
    expect(isRight({ ...one, isBrokenOff: true }, station)).toBe(false);
  });
});

describe("changes", () => {
  const off = changeTry({ repetition: 4, outcome: "off" });
  test.each([
    { tries: clean, ended: "finished", verdict: "pass", why: "four of four" },
    { tries: [...clean.slice(0, 3), off], ended: "finished", verdict: "pass", why: "three of four" },
    { tries: [...clean.slice(0, 2), off, off], ended: "finished", verdict: "fail", why: "two of four" },
    { tries: clean.slice(0, 2), ended: "broken-off", verdict: "not shown", why: "two to come" },
    { tries: clean.slice(0, 2), ended: "time", verdict: "fail", why: "two missed" },
  ] as const)("right, three of four asked: $verdict ($why)", ({ tries, ended, verdict }) => {
    expect(marked(changeStation({ passMarks: { right: 3 } }), tries, ended).verdict).toBe(verdict);
  });

  test.each([
    { faulty: 0, verdict: "pass" },
    { faulty: 1, verdict: "pass" },
    { faulty: 2, verdict: "fail" },
  ])("$faulty of four with a fault, one allowed: $verdict", ({ faulty, verdict }) => {
    const tries = clean.map((one, k) => (k < faulty ? { ...one, faults: fault } : one));
    expect(marked(changeStation({ passMarks: { faultyTries: 1 } }), tries).verdict).toBe(verdict);
  });

  test("the mean time is that of tries to their end", () => {
    const tries = [changeTry({ time_ms: 100_000 }), changeTry({ time_ms: 200_000 }), changeTry({ isBrokenOff: true })];
    const [mark] = marked(changeStation({ repetitions: 3, passMarks: { meanTime_s: 150 } }), tries).marks;
    expect([mark?.verdict, mark?.value]).toEqual(["pass", 150]);
  });

  test("tell how sure a count is", () => {
    const [mark] = marked(changeStation({ passMarks: { right: 3 } }), clean).marks;
    expect(mark?.says).toBe("4 of 4 right; at least 3 asked");
    // Wilson, 4 of 4: n/(n + z^2) = 4/7.8415. Clopper-Pearson: 0.025^(1/4) = 0.3976.
    expect(mark?.sureness).toBe("the true rate lies between 51 % and 100 %");
    expect(mark?.method).toBe("Wilson, 95 %; by Clopper-Pearson it lies between 40 % and 100 %");
  });
});

describe("sizes of trouble", () => {
  const sized = (...errors: readonly (number | null)[]) =>
    errors.map((sizeError, k) => troubleTry({ repetition: k + 1, sizeError }));
  // t of 3 degrees of freedom, one-sided 95 %: 2.353. Errors of 0.1 and 0.3 by turns: mean 0.2, s 0.115470, s/2 0.057735.
  test.each([
    { limit: 0.336, errors: [0.1, -0.3, 0.1, -0.3], verdict: "pass", why: "0.2 + 2.353 x 0.0577 = 0.3359" },
    { limit: 0.335, errors: [0.1, -0.3, 0.1, -0.3], verdict: "not shown", why: "a hair less" },
    { limit: 0.065, errors: [0.1, -0.3, 0.1, -0.3], verdict: "not shown", why: "0.2 - 2.353 x 0.0577 = 0.0641" },
    { limit: 0.064, errors: [0.1, -0.3, 0.1, -0.3], verdict: "fail", why: "a hair less" },
    { limit: 1, errors: [0.1, null, null], verdict: "not shown", why: "one size is no sample" },
    { limit: 0.5, errors: [0.2, null, -0.2], verdict: "pass", why: "sizes that are none do not count" },
  ])("$errors, $limit allowed: $verdict ($why)", ({ limit, errors, verdict }) => {
    expect(marked(troubleStation({ passMarks: { sizeError: limit } }), sized(...errors)).verdict).toBe(verdict);
  });

  test("the mean is of sizes without their sign", () => {
    const [mark] = marked(troubleStation({ passMarks: { sizeError: 1 } }), sized(0.5, -0.5, 0.5, -0.5)).marks;
    expect(mark?.value).toBe(0.5);
    expect(mark?.says).toBe("sizes off by 0.50 graduations on average over 4; at most 1 asked");
  });
});

describe("fittings", () => {
  const faulty = fittingTry({ faults: [{ code: "rubs" }, { code: "end-play" }] });
  const lost = lostTry({ kind: "fitting" }, { station: 0, repetition: 2, combination: null });
  test.each([
    { tries: [fittingTry(), faulty], verdict: "pass", why: "two faults in all" },
    { tries: [faulty, faulty], verdict: "fail", why: "four faults" },
    { tries: [fittingTry(), fittingTry({ declared: null })], verdict: "fail", why: "one never said to be fitted" },
    { tries: [fittingTry(), fittingTry({ declared: "spent" })], verdict: "fail", why: "one with spoiled parts" },
    { tries: [fittingTry()], verdict: "not shown", why: "one to come" },
    { tries: [fittingTry(), lost], verdict: "not shown", why: "one lost" },
  ])("pass with at most two faults: $why, $verdict", ({ tries, verdict }) => {
    expect(marked(fittingStation({ passMarks: { faults: 2 } }), tries, "broken-off").verdict).toBe(verdict);
  });

  test("are counted right where nothing is wrong with them, and told so", () => {
    const { marks } = marked(fittingStation({ passMarks: { right: 2, faults: 1 } }), [fittingTry(), faulty]);
    expect(marks.map(({ verdict, says }) => [verdict, says])).toEqual([
      ["fail", "1 of 2 right; at least 2 asked"],
      ["fail", "2 faults in 2 fits; at most 1 allowed"],
    ]);
  });
});

describe("service visits", () => {
  const faulty = serviceTry({
    faults: [
      { code: "door-not-held", about: null },
      { code: "not-asked", about: "trouble" },
    ],
  });
  const lost = lostTry({ kind: "service" }, { station: 0, repetition: 2, combination: null });
  test.each([
    { tries: [serviceTry(), faulty], verdict: "pass", why: "two faults in all" },
    { tries: [faulty, faulty], verdict: "fail", why: "four faults" },
    { tries: [serviceTry(), serviceTry({ isLeft: false })], verdict: "fail", why: "one never ended" },
    { tries: [serviceTry()], verdict: "not shown", why: "one to come" },
    { tries: [serviceTry(), lost], verdict: "not shown", why: "one lost" },
  ])("pass with at most two faults: $why, $verdict", ({ tries, verdict }) => {
    expect(marked(serviceStation({ passMarks: { faults: 2 } }), tries, "broken-off").verdict).toBe(verdict);
  });

  test("are counted right where they have no fault, and told so", () => {
    const { marks } = marked(serviceStation({ passMarks: { right: 2, faults: 1 } }), [serviceTry(), faulty]);
    expect(marks.map(({ verdict, says }) => [verdict, says])).toEqual([
      ["fail", "1 of 2 right; at least 2 asked"],
      ["fail", "2 faults in 2 visits; at most 1 allowed"],
    ]);
  });
});

describe("fits that are judged", () => {
  const wrong = inspectionTry({ named: ["bolt-binds"] });
  /** Said to have nothing wrong, without a check. */
  const untouched = (faults: readonly FitFault[]) => inspectionTry({ faults, named: [], skipped: [...FIT_CHECKS] });
  const unseen = inspectionTry({ skipped: [...FIT_CHECKS] });
  const lost = lostTry({ kind: "inspection" }, { station: 0, repetition: 2, combination: null });
  test.each([
    { tries: [inspectionTry(), wrong], verdict: "pass", why: "one overlooked, one named in vain" },
    { tries: [wrong, wrong], verdict: "fail", why: "four mistakes" },
    { tries: [inspectionTry(), inspectionTry({ named: null })], verdict: "fail", why: "one without an answer" },
    { tries: [untouched(["rubs"]), untouched([])], verdict: "fail", why: "nothing said to be wrong, unchecked" },
    { tries: [unseen, wrong], verdict: "fail", why: "one fault named unseen" },
    { tries: [inspectionTry()], verdict: "not shown", why: "one to come" },
    { tries: [inspectionTry(), lost], verdict: "not shown", why: "one lost" },
  ])("pass with at most two mistakes: $why, $verdict", ({ tries, verdict }) => {
    expect(marked(inspectionStation({ passMarks: { mistakes: 2 } }), tries, "broken-off").verdict).toBe(verdict);
  });

  test("are counted right where what is wrong was named after a check that shows it, and told so", () => {
    const { marks } = marked(inspectionStation({ passMarks: { right: 2, mistakes: 1 } }), [inspectionTry(), wrong]);
    expect(marks.map(({ verdict, says }) => [verdict, says])).toEqual([
      ["fail", "1 of 2 right; at least 2 asked"],
      ["fail", "2 mistakes in 2 fits; at most 1 allowed"],
    ]);
  });

  test("have a fault where a mistake was made, not where one was found", () => {
    expect(hasFault(inspectionTry(), inspectionStation())).toBe(false);
    expect(hasFault(wrong, inspectionStation())).toBe(true);
  });
});

describe("handovers", () => {
  const spoiled = handoverTry({ faults: [{ code: "shut-unproved" }] });
  test.each([
    { tries: [handoverTry(), handoverTry()], verdict: "pass", why: "both clean" },
    { tries: [handoverTry(), spoiled], verdict: "fail", why: "one with a fault" },
    { tries: [handoverTry()], verdict: "not shown", why: "one to come" },
  ])("two clean asked: $verdict ($why)", ({ tries, verdict }) => {
    expect(marked(handoverStation({ passMarks: { clean: 2 } }), tries, "broken-off").verdict).toBe(verdict);
  });

  test("a run with something missing is not clean, and has no fault", () => {
    const tries = [handoverTry({ missing: ["record"] }), handoverTry()];
    const { marks } = marked(handoverStation({ passMarks: { clean: 2, faultyTries: 0 } }), tries);
    expect(marks.map(({ verdict, says }) => [verdict, says])).toEqual([
      ["fail", "1 of 2 clean; at least 2 asked"],
      ["pass", "0 of 2 tries with a fault; at most 0 allowed"],
    ]);
  });
});

test("a try of another kind does not count at a station", () => {
  const station = changeStation({ repetitions: 2, passMarks: { right: 1 } });
  expect(marked(station, triesRight(2, 2)).verdict).toBe("not shown");
  expect(marked(station, triesRight(2, 2), "time").verdict).toBe("fail");
});

test.each([changeStation(), troubleStation(), handoverStation(), dialingStation(), zeroingStation()])(
  "a lost try at $kind is made, of its kind, and not right",
  (station) => {
    const place = { station: 3, repetition: 2, combination: [38, 71, 26] };
    const lost = lostTry(station, place);
    expect(lost).toMatchObject({ kind: station.kind, station: 3, repetition: 2, isBrokenOff: true });
    expect(isRight(lost, station)).toBe(false);
  },
);

test("the scheme of a job says what is asked and how it is judged", () => {
  const stations = [
    changeStation({ passMarks: { right: 3, faultyTries: 1, meanTime_s: 300 } }),
    troubleStation({ passMarks: { right: 5, sizeError: 0.5 } }),
    handoverStation({ passMarks: { clean: 1 } }),
  ];
  const rows = schemeRows(markingScheme(testSheet({ stations })));
  expect(rows.map(([place, asks]) => `${place}: ${asks}`).slice(1)).toEqual([
    "Station 1: At least 3 of 4 changes open as written and are proved 3 times.",
    "Station 1: At most 1 of 4 tries have a fault.",
    "Station 1: A try takes at most 300 s on average.",
    "Station 2: At least 5 of 6 defects are named right.",
    "Station 2: Where the defect is named right, the size named is off by at most 0.5 graduations on average.",
    "Station 3: At least 1 of 2 handovers have nothing missing and no fault.",
  ]);
});
