import { describe, expect, test } from "vitest";
import { isAdmitted, marksFractions } from "../../../src/drill/marking/isAdmitted";
import { markingScheme } from "../../../src/drill/marking/markingScheme";
import { markSitting } from "../../../src/drill/marking/markSitting";
import { isRight, zeroShown } from "../../../src/drill/marking/tryResult";
import type { Admission } from "../../../src/drill/sheet/admission";
import { parseSheet } from "../../../src/drill/sheet/parseSheet";
import { sheetSha256 } from "../../../src/drill/sheet/sheetFingerprint";
import { describeSource, type SourceDescription } from "../../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../../src/realdial/sources/sourcesSeen";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";
import { dialingTry, zeroingTry } from "../../support/testTries";

const ENCODER = describeSource("encoder", 0.05);
const FINE_MIDI = describeSource("midi", 0.2);
const COARSE_KEYS = describeSource("knob-keys", 1);

type Row = readonly [SourceDescription | null, readonly Admission[]];

/** Which rules admit what; null is a try of an earlier version, which says nothing. */
const ADMITTED: readonly Row[] = [
  [null, ["any", "screen", "not-coarse"]],
  [SCREEN_SOURCE, ["any", "screen", "not-coarse"]],
  [ENCODER, ["any", "real-dial", "not-coarse"]],
  [FINE_MIDI, ["any", "not-coarse"]],
  [COARSE_KEYS, ["any"]],
];

describe.each(ADMITTED)("%o where count and order are marked", (source, by) => {
  test.each(["any", "screen", "real-dial", "not-coarse"] as const)("under %s", (turnedBy) => {
    const one = dialingTry(source === null ? {} : { sources: [source] });
    const station = dialingStation({ turnedBy });
    expect(isAdmitted(one, station)).toBe(by.includes(turnedBy));
    expect(isRight(one, station)).toBe(by.includes(turnedBy));
  });
});

test("one source that is not admitted spoils a mixed try", () => {
  const one = dialingTry({ sources: [ENCODER, SCREEN_SOURCE] });
  expect(isAdmitted(one, dialingStation({ turnedBy: "real-dial" }))).toBe(false);
  expect(isAdmitted(one, dialingStation())).toBe(true);
});

test.each([
  ["dialing, by first-time openings", dialingStation({ passMarks: { firstTime: 3 } }), false],
  ["dialing, by bias", dialingStation({ passMarks: { stopErrorBias: 0.5 } }), true],
  ["dialing, by spread", dialingStation({ passMarks: { stopErrorSpread: 0.5 } }), true],
  ["zeroing", zeroingStation(), true],
] as const)("%s: stops to a fraction, %#", (_, station, isFraction) => {
  expect(marksFractions(station)).toBe(isFraction);
  expect(isAdmitted({ sources: [COARSE_KEYS] }, station)).toBe(!isFraction);
  expect(isAdmitted({ sources: [ENCODER] }, station)).toBe(true);
});

test("a zero that a coarse source has set is no zero that was shown", () => {
  expect(zeroShown(zeroingTry({ sources: [ENCODER] }), zeroingStation())).toBe("accept");
  expect(zeroShown(zeroingTry({ sources: [COARSE_KEYS] }), zeroingStation())).toBe("reject");
});

test("stops of a source that is not admitted count neither for nor against the hand", () => {
  const station = dialingStation({ turnedBy: "real-dial", repetitions: 6, passMarks: { stopErrorBias: 0.5 } });
  const sheet = testSheet({ stations: [station] });
  const good = [1, 2, 3].map((repetition) => dialingTry({ repetition, sources: [ENCODER] }));
  const bad = [4, 5, 6].map((repetition) => dialingTry({ repetition, stopErrors: [5, 5, 5] }));
  const mark = (tries: typeof good) =>
    markSitting(markingScheme(sheet), sheet, { tries, answers: [], ended: "finished" }).marks[0]?.value;
  expect(mark([...good, ...bad])).toBe(mark(good));
});

test("a sheet is read with its rule, refused with one that is none, and has a fingerprint by it", () => {
  const sheetOf = (turnedBy?: string) =>
    JSON.parse(JSON.stringify(testSheet({ stations: [{ ...dialingStation(), turnedBy } as never] })));
  const plain = parseSheet(sheetOf());
  const real = parseSheet(sheetOf("real-dial"));
  expect(real.stations[0]).toMatchObject({ turnedBy: "real-dial" });
  expect(sheetSha256(real)).not.toBe(sheetSha256(plain));
  expect(sheetSha256(parseSheet(sheetOf("any")))).toBe(sheetSha256(plain));
  expect(() => parseSheet(sheetOf("a hammer"))).toThrow();
});
