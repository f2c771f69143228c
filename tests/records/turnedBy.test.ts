import { expect, test } from "vitest";
import { describeSource } from "../../src/realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../src/realdial/sources/sourcesSeen";
import { attemptSchema } from "../../src/records/attemptRecord";
import { attemptsCsv } from "../../src/records/csv/attemptsCsv";
import { sourceTexts } from "../../src/records/sourceTexts";
import { triedRight } from "../../src/records/triedRight";
import { extension } from "../../src/records/xapi/statement";
import { attemptParts } from "../../src/records/xapi/tryStatements";
import { parseAttemptLine, writeAttemptLine } from "../../src/trace/recordedAttempt";
import { anAttempt, contents } from "../support/logbookRecords";

const ENCODER = describeSource("encoder", 100 / 2400, 0.01);
const HIDDEN = describeSource("ordinary-dial", 0.06, 0.02, false);

test.each([
  ["nothing said", undefined, ["screen"]],
  ["an encoder", [ENCODER], ["encoder (0.0417, noise 0.01)"]],
  ["one that keeps no motion", [HIDDEN], ["ordinary-dial (0.06, noise 0.02, no motion kept)"]],
  ["mixed", [SCREEN_SOURCE, describeSource("midi", 0.8)], ["screen", "midi (0.8, noise not measured)"]],
])("%s, as files have it", (_, sources, texts) => {
  expect(sourceTexts({ sources })).toEqual(texts);
});

test("an attempt keeps what turned it, in CSV and as a statement; one without a word is of the screen", () => {
  const plain = anAttempt("plain");
  const turned = attemptSchema.parse({ ...anAttempt("turned"), sources: [ENCODER], isNotAdmitted: true });
  expect(turned.sources).toEqual([ENCODER]);
  const rows = attemptsCsv(contents([], [plain, turned])).split("\n");
  expect(rows[0]).toMatch(/turned_by,not_admitted,turns_in_doubt,doubt_refused$/);
  expect(rows.find((row) => row.startsWith("plain"))).toMatch(/,screen,0?,,0?$/);
  expect(rows.find((row) => row.startsWith("turned"))).toMatch(/"encoder \(0\.0417, noise 0\.01\)",1,,0?$/);
  const extensions = (one: typeof plain) => Object.keys(attemptParts(one).result.extensions ?? {}).join();
  expect(extensions(turned)).toContain("turned-by");
  expect(extensions(plain)).not.toContain("turned-by");
});

test("a record says that no motion of it was kept, by choice", () => {
  expect(attemptSchema.parse({ ...anAttempt("one"), sources: [HIDDEN] }).sources).toEqual([HIDDEN]);
  expect(attemptSchema.safeParse({ ...anAttempt("one"), sources: [{ ...HIDDEN, keepsNoMotion: "no" }] }).success).toBe(
    false,
  );
});

test("an attempt keeps why its turns are in doubt, in CSV and as a statement; one of before opens without it", () => {
  const plain = anAttempt("plain");
  const doubted = attemptSchema.parse({ ...anAttempt("doubted"), doubts: ["sight-lost", "gap"], isDoubtRefused: true });
  expect(doubted.doubts).toEqual(["sight-lost", "gap"]);
  expect(attemptSchema.parse(plain)).not.toHaveProperty("doubts");
  const rows = attemptsCsv(contents([], [plain, doubted])).split("\n");
  expect(rows.find((row) => row.startsWith("doubted"))).toMatch(/,sight-lost; gap,1$/);
  expect(attemptParts(doubted).result.extensions).toMatchObject({
    [extension("turns-in-doubt")]: ["sight-lost", "gap"],
  });
  expect(attemptParts(plain).result.extensions).not.toHaveProperty(extension("turns-in-doubt"));
  expect(triedRight({ ...doubted, opened: true })).toBe(false);
  expect(triedRight({ ...doubted, opened: true, isDoubtRefused: undefined })).toBe(true);
});

test.each([[{ kind: "hammer" }], [null], ["encoder"]])("a record of %j is refused", (source) => {
  expect(attemptSchema.safeParse({ ...anAttempt("one"), sources: [source] }).success).toBe(false);
});

test("a line of the replay format has what turned the dial, and is read back with it", () => {
  const line = JSON.stringify({
    profile: "three-wheel",
    combination: [38, 71, 26],
    positions: [0, 1],
    sources: [ENCODER],
  });
  const read = parseAttemptLine(line);
  expect(read.sources).toEqual([ENCODER]);
  expect(parseAttemptLine(writeAttemptLine(read, "three-wheel")).sources).toEqual([ENCODER]);
  expect(() => parseAttemptLine(line.replace('"encoder"', '"hammer"'))).toThrow("sources");
});

test("a try from a source that is not admitted is no right one", () => {
  expect(triedRight({ opened: true })).toBe(true);
  expect(triedRight({ opened: true, isNotAdmitted: true })).toBe(false);
});
