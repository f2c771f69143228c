import { expect, test } from "vitest";
import { problemWords } from "../../../src/app/school/askServer";
import { schoolProblem } from "../../../src/school/schoolWords";
import type { Problem } from "../../../src/wording/problem";

const ofDigits: Problem = { code: "digits", path: ["pin"], values: { least: 4, most: 12 } };

test.each<readonly [string, Problem, RegExp]>([
  ["a field is called as its label calls it", ofDigits, /^the PIN must be 4 to 12 digits/],
  ["a sentence of its own needs no label", schoolProblem("wrong-pin", ["pin"]), /^this name has a PIN/],
  ["what is deeper keeps its path", schoolProblem("no-name", ["rows", 3, "name"]), /^rows\[3\]\.name: /],
  [
    "nor does one about a field that nobody sees",
    schoolProblem("too-many-rows", ["csv"], { most: 9 }),
    /^this file has/,
  ],
  ["a field without a label keeps its name", { ...ofDigits, path: ["csv"] }, /^csv must be 4 to 12 digits/],
  ["a secret that was cut off", { ...ofDigits, path: ["token"] }, /^a part of this address is missing; scan/],
])("%s", (_, problem, says) => {
  expect(problemWords(problem)).toMatch(says);
});
