import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ReadingsError } from "../../src/zeroing/readingsError";
import { ReadingsCollector } from "../../src/zeroing/readingsFile";
import { lineProblemText } from "../../src/zeroing/readingsWords";

function parseReadings(lines: readonly string[]) {
  const collector = new ReadingsCollector();
  for (const line of lines) collector.takeLine(line);
  return collector.sidesRead();
}

const WANTED = { right: [0.2, -0.1], left: [0.5, -0.25] };
const JSON_LINES = [
  '{"direction":"right","deviation":0.2}',
  '{"deviation":5e-1,"direction":"left","note":"by hand"}',
  '{"direction":"right","deviation":-0.1}',
  '{"direction":"left","deviation":-0.25}',
];
const CSV = ["right,0.2", "left,0.5", "right,-0.1", "left,-0.25"];

describe("readings are read", () => {
  test.each([
    { why: "JSON Lines", lines: JSON_LINES },
    { why: "comma-separated values", lines: CSV },
    { why: "with a header", lines: ["direction,deviation", ...CSV] },
    { why: "with a header in any letters, and a mark before it", lines: ["\uFEFFDirection, Deviation", ...CSV] },
    {
      why: "with other columns, as the header says",
      lines: ["n,deviation,direction", "1,.2,right", "2,+0.5,left", "3,-.1,right", "4,-25e-2,left"],
    },
    {
      why: "with quotes, spaces and carriage returns",
      lines: CSV.map((line) => ` ${line.replace(/(\w+),(.*)/, '"$1" , "$2"')} \r`),
    },
    { why: "with capitals", lines: CSV.map((line) => line.replace("r", "R").replace("left", "LEFT")) },
    { why: "with blank lines", lines: ["", ...CSV, "  ", ""] },
    { why: "both forms in one", lines: [...JSON_LINES.slice(0, 2), ...CSV.slice(2)] },
  ])("$why", ({ lines }) => {
    expect(parseReadings(lines)).toEqual(WANTED);
  });

  test("as they were written, in either form", () => {
    const deviation = fc.double({ min: -50, max: 50, noNaN: true });
    const side = fc.array(deviation, { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(side, side, fc.boolean(), (right, left, asJson) => {
        const line = (direction: string) => (value: number) =>
          asJson ? JSON.stringify({ direction, deviation: value }) : `${direction},${value}`;
        const read = parseReadings([...right.map(line("right")), ...left.map(line("left"))]);
        expect(read.right.map((value) => value + 0)).toEqual(right.map((value) => value + 0));
        expect(read.left.map((value) => value + 0)).toEqual(left.map((value) => value + 0));
      }),
    );
  });

  test("half a turn either way is not absurd", () => {
    expect(parseReadings(["right,50", "right,-50", "left,0", "left,0"]).right).toEqual([50, -50]);
  });
});

const problemsOf = (lines: readonly string[]): readonly string[] => {
  try {
    parseReadings(lines);
  } catch (error) {
    if (error instanceof ReadingsError) return error.problems.map(lineProblemText);
    throw error;
  }
  return [];
};

describe("a bad line gets a sentence that names it", () => {
  test.each([
    { line: "up,0.1", says: 'direction must be "right" or "left", not "up"' },
    { line: ",0.1", says: 'direction must be "right" or "left", not ""' },
    { line: "right", says: "deviation must be a number (it is missing)" },
    { line: "right,", says: 'deviation must be a number, not ""' },
    { line: "right,0,2", says: 'deviation must be a number, not "right,0,2"' },
    { line: "right,NaN", says: 'deviation must be a number, not "NaN"' },
    { line: "right,Infinity", says: 'deviation must be a number, not "Infinity"' },
    { line: "right,0x10", says: 'deviation must be a number, not "0x10"' },
    { line: "right,little", says: 'deviation must be a number, not "little"' },
    { line: "right,50.01", says: "deviation must be within half a turn (50 graduations) of zero, not 50.01" },
    { line: "left,-1e300", says: "not -1e+300" },
    { line: '{"direction":"right","deviation":1e999}', says: "not Infinity" },
    { line: '{"direction":"right","deviation":"0.2"}', says: 'deviation must be a number, not "0.2"' },
    { line: '{"direction":"right","deviation":null}', says: "deviation must be a number, not null" },
    { line: '{"direction":"right"}', says: "deviation must be a number (it is missing)" },
    { line: '{"direction":"Right","deviation":0}', says: 'direction must be "right" or "left", not "Right"' },
    { line: '{"deviation":0.1}', says: 'direction must be "right" or "left" (it is missing)' },
    { line: '{"direction":"right","deviation":NaN}', says: "not one whole JSON object" },
    { line: '{"direction":"right"', says: "not one whole JSON object" },
    { line: '[{"direction":"right","deviation":0}]', says: "direction must be" },
    { line: "direction,deviation", says: 'direction must be "right" or "left", not "direction"' },
  ])("$line", ({ line, says }) => {
    const problems = problemsOf([...CSV, "", line]);
    expect(problems).toEqual([expect.stringContaining(says)]);
    expect(problems[0]).toMatch(/^line 6: /);
  });

  test("and all of them are told", () => {
    expect(problemsOf(["up,0", "right,x", "left,99"]).map((one) => one.slice(0, 7))).toEqual([
      "line 1:",
      "line 2:",
      "line 3:",
    ]);
  });
});

describe("too few readings", () => {
  test.each([
    { why: "none at all", lines: [], says: [/no stops turning right/, /no stops turning left/] },
    {
      why: "a header alone",
      lines: ["direction,deviation"],
      says: [/no stops turning right/, /no stops turning left/],
    },
    { why: "one side only", lines: ["right,0", "right,0"], says: [/no stops turning left.*two in each direction/] },
    {
      why: "one reading of a side",
      lines: ["left,0", "", "right,0", "left,0"],
      says: [/^line 3: .*only stop turning right/],
    },
  ])("$why", ({ lines, says }) => {
    expect(problemsOf(lines)).toEqual(says.map((pattern) => expect.stringMatching(pattern)));
  });
});

test("no text whatever breaks it", () => {
  const line = fc.oneof(fc.string(), fc.json(), fc.constantFrom(...CSV, ...JSON_LINES));
  fc.assert(
    fc.property(fc.array(line), (lines) => {
      const problems = problemsOf(lines);
      for (const problem of problems) expect(problem).not.toMatch(/undefined|\[object/);
    }),
  );
});
