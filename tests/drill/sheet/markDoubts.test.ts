import { describe, expect, test } from "vitest";
import { DRILL_WORDS } from "../../../src/drill/drillWords";
import { markDoubts } from "../../../src/drill/sheet/markDoubts";
import type { Sheet } from "../../../src/drill/sheet/sheet";
import { pathText, wordsOf } from "../../../src/wording/problem";
import { changeStation, dialingStation, testSheet, troubleStation, zeroingStation } from "../../support/testSheet";

const TEST = { pauseAllowed: false, onReload: "resume", clockHideable: true } as const;
const sheetOf = (...stations: Sheet["stations"]) => testSheet({ stations });
const paths = (sheet: Sheet) => markDoubts(sheet).map(({ path }) => pathText(path));

describe("marks that cannot be reached, cannot be missed, or contradict each other", () => {
  test.each([
    {
      why: "21 of 21 do not show 90 % with 90 %: the success-run theorem asks for 22",
      station: dialingStation({ repetitions: 21, passMarks: { claim: { rate: 0.9, confidence: 0.9 } } }),
      says: [
        "stations[0].passMarks.claim.rate",
        "cannot be reached: 21 of 21 do not show 90 % with 90 % confidence. It takes at least 22 tries",
      ],
    },
    {
      why: "58 of 58 do not show 95 % with 95 %: it takes 59",
      station: dialingStation({ repetitions: 58, passMarks: { claim: { rate: 0.95, confidence: 0.95 } } }),
      says: [
        "stations[0].passMarks.claim.rate",
        "cannot be reached: 58 of 58 do not show 95 % with 95 % confidence. It takes at least 59 tries",
      ],
    },
    {
      why: "one miss is allowed by one mark and forbidden by the other",
      station: dialingStation({ repetitions: 22, passMarks: { firstTime: 21, claim: { rate: 0.9, confidence: 0.9 } } }),
      says: [
        "stations[0].passMarks.firstTime",
        "the marks contradict each other: 21 of 22 passes here, but does not show 90 % with 90 % confidence",
      ],
    },
    {
      why: "no hand has a bias of nothing",
      station: dialingStation({ passMarks: { stopErrorBias: 0 } }),
      says: ["stations[0].passMarks.stopErrorBias", "cannot be reached: no hand stops without any error"],
    },
    {
      why: "one try has no interval",
      station: dialingStation({ repetitions: 1, passMarks: { stopErrorSpread: 0.5 } }),
      says: ["stations[0].passMarks.stopErrorSpread", "cannot be reached with 1 try: it takes at least 2 tries"],
    },
    {
      why: "a mean beyond the limit of each",
      station: zeroingStation({ timeLimit_s: 60, passMarks: { meanTime_s: 60 } }),
      says: ["stations[0].passMarks.meanTime_s", "cannot be missed: a try ends after 60 s"],
    },
    {
      why: "as many faults as tries",
      station: changeStation({ repetitions: 4, passMarks: { faultyTries: 4 } }),
      says: ["stations[0].passMarks.faultyTries", "cannot be missed: every try may have a fault"],
    },
    {
      why: "a size without error",
      station: troubleStation({ passMarks: { sizeError: 0 } }),
      says: ["stations[0].passMarks.sizeError", "cannot be reached: no size is measured without any error"],
    },
  ])("$why", ({ station, says }) => {
    expect(markDoubts(sheetOf(station)).map((one) => [pathText(one.path), wordsOf(one, DRILL_WORDS)])).toEqual([says]);
  });

  test("a claim with misses that the tries bear is in order: 37 of 38 show 90 % with 90 %", () => {
    const passMarks = { firstTime: 37, claim: { rate: 0.9, confidence: 0.9 } };
    expect(paths(sheetOf(dialingStation({ repetitions: 38, passMarks })))).toEqual([]);
    expect(paths(sheetOf(dialingStation({ repetitions: 37, passMarks: { ...passMarks, firstTime: 36 } })))).toEqual([
      "stations[0].passMarks.firstTime",
    ]);
  });

  test("full help is unusual in a test, and in nothing else", () => {
    const station = dialingStation({ help: "full" });
    expect(paths({ ...sheetOf(station), sitting: TEST })).toEqual(["stations[0].help"]);
    expect(paths(sheetOf(station))).toEqual([]);
  });

  test("no hand dials 10 tries in 40 s", () => {
    expect(paths({ ...testSheet(), sitting: { ...TEST, timeLimit_s: 40 } })).toEqual(["sitting.timeLimit_s"]);
    expect(paths({ ...testSheet(), sitting: { ...TEST, timeLimit_s: 600 } })).toEqual([]);
  });
});
