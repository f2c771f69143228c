import { expect, test } from "vitest";
import { isBegunAgain, MOST_BEGUN_AGAIN } from "../../../src/drill/marking/lostSight";
import { markingScheme } from "../../../src/drill/marking/markingScheme";
import { markSitting } from "../../../src/drill/marking/markSitting";
import { isRight, zeroShown } from "../../../src/drill/marking/tryResult";
import { parseSheet } from "../../../src/drill/sheet/parseSheet";
import { sheetSha256 } from "../../../src/drill/sheet/sheetFingerprint";
import { tryChance } from "../../../src/drill/sitting/tryChance";
import { describeSource } from "../../../src/realdial/sources/sourceDescription";
import { tryMisfit } from "../../../src/records/sitting/tryPlausible";
import { dialingStation, testSheet, zeroingStation } from "../../support/testSheet";
import { dialingTry, zeroingTry } from "../../support/testTries";

const DOUBTED = { sources: [describeSource("encoder", 0.05)], doubts: ["sight-lost"] } as const;

test.each([
  [undefined, true],
  ["counts", true],
  ["fails", false],
  ["try-again", false],
] as const)("under %s a try with turns in doubt is right: %s; one without is", (lostSight, counts) => {
  const station = dialingStation({ lostSight });
  expect(isRight(dialingTry(DOUBTED), station)).toBe(counts);
  expect(isRight(dialingTry(), station)).toBe(true);
  expect(zeroShown(zeroingTry(DOUBTED), zeroingStation({ lostSight }))).toBe(counts ? "accept" : "reject");
});

test("a try is begun again where its station says so, and so often as is allowed", () => {
  const station = dialingStation({ lostSight: "try-again" });
  const times = Array.from({ length: MOST_BEGUN_AGAIN + 2 }, (_, begun) => isBegunAgain(station, begun));
  expect(times).toEqual([true, true, false, false]);
  expect(isBegunAgain(dialingStation(), 0)).toBe(false);
  expect(isBegunAgain(dialingStation({ lostSight: "fails" }), 0)).toBe(false);
});

test("stops of a try that does not count for its doubt speak neither for nor against the hand", () => {
  const station = dialingStation({ lostSight: "fails", repetitions: 6, passMarks: { stopErrorBias: 0.5 } });
  const sheet = testSheet({ stations: [station] });
  const good = [1, 2, 3].map((repetition) => dialingTry({ repetition }));
  const bad = [4, 5, 6].map((repetition) => dialingTry({ repetition, stopErrors: [5, 5, 5], ...DOUBTED }));
  const mark = (tries: typeof good) =>
    markSitting(markingScheme(sheet), sheet, { tries, answers: [], ended: "finished" }).marks[0]?.value;
  expect(mark([...good, ...bad])).toBe(mark(good));
});

test("a sheet is read with its rule, refused with one that is none, and one without has the fingerprint it had", () => {
  const sheetOf = (lostSight?: string) =>
    JSON.parse(JSON.stringify(testSheet({ stations: [{ ...dialingStation(), lostSight } as never] })));
  const plain = parseSheet(sheetOf());
  expect(sheetSha256(parseSheet(sheetOf("fails")))).not.toBe(sheetSha256(plain));
  expect(sheetSha256(parseSheet(sheetOf("counts")))).toBe(sheetSha256(plain));
  expect(() => parseSheet(sheetOf("forgives"))).toThrow();
});

test.each([
  ["never begun again", undefined, {}, undefined],
  ["begun again without a rule", undefined, { begunAgain: 1 }, "begun-again-unasked"],
  ["begun again where it fails", "fails", { begunAgain: 1 }, "begun-again-unasked"],
  ["begun again by the rule", "try-again", { begunAgain: 1 }, undefined],
  ["doubtful before the limit", "try-again", { ...DOUBTED, begunAgain: 1 }, "doubt-not-begun-again"],
  ["doubtful at the limit", "try-again", { ...DOUBTED, begunAgain: MOST_BEGUN_AGAIN }, undefined],
] as const)("a record of a try: %s", (_, lostSight, fields, code) => {
  expect(tryMisfit(dialingTry({ ...fields }), dialingStation({ lostSight }))?.code).toBe(code);
  expect(tryMisfit(zeroingTry({ ...fields }), zeroingStation({ lostSight }))?.code).toBe(code);
});

test("a try that is begun again has a chance of its own; one that is not has the one it had", () => {
  const firsts = [tryChance(7, 3), tryChance(7, 3, 0), tryChance(7, 3, 1), tryChance(7, 3, 2), tryChance(7, 4)];
  const [plain, zero, ...others] = firsts.map((chance) => chance());
  expect(zero).toBe(plain);
  expect(new Set([plain, ...others]).size).toBe(4);
});
