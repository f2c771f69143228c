import { describe, expect, test } from "vitest";
import { checkProblem, checkSentences, tryProblem } from "../../../src/records/sitting/checkWords";

describe("a finding with a count of one", () => {
  test.each([
    { found: checkProblem("numbers-dialed", [], { count: 1, length: 3 }), says: "dials 1 number, but its lock has 3" },
    {
      found: checkProblem("stop-errors", [], { count: 1, length: 3 }),
      says: "has 1 stop error, but its lock has 3 numbers",
    },
    {
      found: checkProblem("refused-count", [], { refused: 1, counted: 2 }),
      says: "counts 1 refused stop, but 2 are on record",
    },
    { found: checkProblem("numbers-set", [], { count: 1, length: 3 }), says: "sets 1 number, but its lock has 3" },
  ])("of a try: it $says", ({ found, says }) => {
    expect(checkSentences([tryProblem(2, found)])).toEqual([`Try 2 ${says}.`]);
  });

  test.each([
    {
      found: checkProblem("too-many-tries", [], { planned: 1, tries: 2 }),
      says: "The sheet has 1 try, but 2 are on record.",
    },
    {
      found: checkProblem("too-many-answers", [], { planned: 0, answers: 1 }),
      says: "The sheet asks 0 questions, but 1 answer is on record.",
    },
    {
      found: checkProblem("tries-missing", [], { planned: 1, tries: 0 }),
      says: "It is recorded as finished with 0 of 1 try.",
    },
    {
      found: checkProblem("answers-missing", [], { planned: 1, answers: 0 }),
      says: "It is recorded as finished with 0 of 1 answer.",
    },
    {
      found: checkProblem("recording-count", [], { recordings: 1, tries: 2 }),
      says: "It holds 1 recording for 2 tries; there must be one place for each.",
    },
  ])("$says", ({ found, says }) => {
    expect(checkSentences([found])).toEqual([says]);
  });
});
