import { describe, expect, test } from "vitest";
import { declarationOf } from "../../src/progress/mastery";
import { missesToRedo } from "../../src/progress/missesToRedo";
import { personalBests } from "../../src/progress/personalBest";
import { readiness } from "../../src/progress/readiness";
import { refresh } from "../../src/progress/refresh";
import { firstTimeOpenings } from "../../src/progress/stops/firstTimeOpenings";
import { attemptParts, zeroingParts } from "../../src/records/xapi/tryStatements";
import { isMiss } from "../../src/store/logbookDatabase";
import { anAttempt, NOON } from "../support/logbookRecords";

const tries = (isLate: boolean, opened = true) =>
  Array.from({ length: 30 }, (_, k) => anAttempt(`a${k}`, { startedAt: NOON + k, opened, ...(isLate && { isLate }) }));

const SKILL = { profileId: "three-wheel", exercise: "open" };

describe("a try that opened too late counts as one that did not open", () => {
  test("for readiness and its declaration", () => {
    expect(readiness(tries(true))).toEqual(readiness(tries(false, false)));
    expect(declarationOf("tavro", SKILL, tries(false))).not.toBeNull();
    expect(declarationOf("tavro", SKILL, tries(true))).toBeNull();
  });

  test("for the share of openings", () => {
    expect(firstTimeOpenings(tries(true))).toMatchObject({ opened: 0, trials: 30 });
    expect(firstTimeOpenings(tries(false))).toMatchObject({ opened: 30 });
  });

  test("for when practice is due, and what to do again", () => {
    expect(refresh(tries(true), NOON)).toEqual(refresh(tries(false, false), NOON));
    expect(missesToRedo(tries(true))).toHaveLength(1);
    expect(missesToRedo(tries(false))).toEqual([]);
  });

  test("in lists of misses and for a learning record store", () => {
    const [late, timely] = [anAttempt("late", { isLate: true }), anAttempt("timely")];
    expect([isMiss(late), isMiss(timely)]).toEqual([true, false]);
    expect(attemptParts(late).result).toMatchObject({ success: false, completion: true });
    expect(attemptParts(timely).result).toMatchObject({ success: true });
    const zeroing = { ...late, outcome: "zero-set" as const, readings: [] };
    expect(zeroingParts(zeroing, undefined).result).toMatchObject({ success: false });
    expect(zeroingParts({ ...zeroing, isLate: undefined }, undefined).result).toMatchObject({ success: true });
  });

  test("but it did open: a best is a best", () => {
    expect(personalBests(tries(true))[0]?.quickest?.opened).toBe(true);
  });
});
