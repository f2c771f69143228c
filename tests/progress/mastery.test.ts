import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { declarationFor, declarationOf, mastery, openingsWanted } from "../../src/progress/mastery";
import { lapseShares, luckyShare, masteryCharacteristic, readyShares } from "../../src/progress/masteryCharacteristic";
import { ruleSentence } from "../../src/progress/masteryWords";
import { practiceOfJob } from "../../src/progress/practice";
import { fadedHelp, practiceOrder } from "../../src/progress/practiceOrder";
import { MASTERY_RULE, type MasteryRule, masteryRuleSchema } from "../../src/records/masteryRule";
import { seededChance } from "../../src/statistics/chance";
import { wilsonInterval } from "../../src/statistics/proportion";
import { aJob, anAttempt, NOON } from "../support/logbookRecords";

const skill = { profileId: "three-wheel", exercise: "open" };
const DAY = 86_400_000;
const tries = (outcomes: readonly boolean[], from = NOON) =>
  outcomes.map((opened, i) => anAttempt(`a${i}`, { opened, startedAt: from + i }));
const outcomes = fc.array(fc.boolean(), { maxLength: 80 });
const openings = (count: number) => Array.from({ length: count }, () => true);
const misses = (count: number) => Array.from({ length: count }, () => false);

describe("mastery of a job", () => {
  const change = { profileId: "three-wheel", exercise: "change" };
  const jobs = (count: number) =>
    Array.from({ length: count }, (_, i) => practiceOfJob(aJob(`j${i}`, { startedAt: NOON + i })));

  test("is shown by as many right ones in a row, and told in words of jobs", () => {
    expect(mastery(change, []).message).toBe("No job yet. 12 right jobs in a row make you ready.");
    expect(mastery(change, jobs(11))).toMatchObject({ isReady: false, wanted: 1 });
    expect(mastery(change, jobs(11)).message).toContain("1 more right job would make you ready");
    expect(mastery(change, jobs(12))).toMatchObject({ isReady: true, shownAt: 12 });
    expect(mastery(change, jobs(12)).message).toMatch(/^Ready since job 12\. /);
    expect(mastery(change, jobs(12)).message).not.toMatch(/attempt|opening/);
    expect(declarationOf("tavro", change, jobs(12))).toMatchObject({ exercise: "change", attempts: 12 });
  });

  test("is set back by one that is not right", () => {
    const after = [...jobs(6), practiceOfJob(aJob("bad", { isRight: false })), ...jobs(6)];
    expect(mastery(change, after).isReady).toBe(false);
  });
});

describe("mastery", () => {
  test("is shown by as many openings in a row as its sentence says", () => {
    expect(openingsWanted(0, 0)).toBe(12);
    expect(mastery(skill, tries(openings(11)))).toMatchObject({ isReady: false });
    expect(mastery(skill, tries(openings(11))).message).toContain("1 more opening would make you ready");
    expect(mastery(skill, tries(openings(12)))).toMatchObject({ isReady: true, shownAt: 12, progress: 1 });
  });

  test("needs what the sentence asks for, wherever one is, and whatever the rule", () => {
    const rules = fc
      .record({
        good: fc.integer({ min: 2, max: 30 }),
        more: fc.integer({ min: 5, max: 50 }),
        minimumAttempts: fc.integer({ min: 1, max: 40 }),
      })
      .map(
        ({ good, more, minimumAttempts }): MasteryRule => ({
          ...MASTERY_RULE,
          adequateFailureRate: good / 100,
          inadequateFailureRate: (good + more) / 100,
          minimumAttempts,
        }),
      );
    fc.assert(
      fc.property(outcomes, rules, (past, rule) => {
        const before = mastery(skill, tries(past), { rule });
        if (before.isReady) return;
        const of = (count: number) => mastery(skill, tries([...past, ...openings(count)]), { rule });
        expect(of(before.wanted - 1).isReady).toBe(false);
        expect(of(before.wanted).isReady).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test("says what the rule shows and how often luck does it, and claims no rate of misses", () => {
    expect(mastery(skill, tries(openings(18))).message).toBe(
      "Ready since attempt 12. The latest stretch of attempts up to there is at least 20 times as likely from someone who misses 1 in 10 as from someone who misses 3 in 10. Luck can do that too: about 1 of 100 people who miss 3 in 10 get there within 12 attempts.",
    );
    const late = mastery(skill, tries([...misses(88), ...openings(12)]));
    expect(late.shownAt).toBe(100);
    expect(late.message).toContain("about 41 of 100 people who miss 3 in 10 get there within 100 attempts.");
  });

  test("outlasts attempts that were deleted, by its declaration, and by that of the same rule alone", () => {
    const kept = declarationOf("tavro", skill, tries(openings(12)));
    expect(kept).toMatchObject({ attempts: 12, declaredAt: NOON + 11 });
    const declaration = kept ?? undefined;
    expect(mastery(skill, [], { declaration })).toMatchObject({ isReady: true, shownAt: 12 });
    expect(mastery(skill, tries([true, false], NOON + DAY), { declaration })).toMatchObject({ isReady: true });
    const strict = { ...MASTERY_RULE, minimumAttempts: 30 };
    const all = kept === null ? [] : [kept];
    expect(declarationFor(all, skill)).toBe(kept);
    expect(declarationFor(all, skill, strict)).toBeUndefined();
    const other = declarationOf("tavro", skill, tries(openings(30)), strict);
    expect(other).toMatchObject({ attempts: 30, rule: strict });
    expect(other?.id).not.toBe(kept?.id);
    expect(declarationFor(other === null ? all : [...all, other], skill, strict)).toBe(other);
  });

  test("is told in sentences, before the first attempt too", () => {
    for (const past of [[], [true], openings(11), openings(20), [...openings(12), ...misses(4)]]) {
      expect(mastery(skill, tries(past)).message).toMatch(/^[A-Z].*\.$/);
    }
  });

  test("declares with the same id on every machine, and another id for another skill", () => {
    const id = (one: typeof skill) => declarationOf("tavro", one, tries(openings(12)))?.id;
    expect(id(skill)).toBe(id({ ...skill }));
    expect(id(skill)).toMatch(/^[\w.:|-]+$/);
    const name = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(name, name, name, name, (a, b, c, d) => {
        const same = a === c && b === d;
        expect(id({ profileId: a, exercise: b }) === id({ profileId: c, exercise: d })).toBe(same);
      }),
    );
  });
});

describe("readiness lapses", () => {
  test("after a run of misses, and is shown again by as many openings as at first", () => {
    expect(mastery(skill, tries([...openings(12), ...misses(3)]))).toMatchObject({ isReady: true });
    const lost = mastery(skill, tries([...openings(12), ...misses(4)]));
    expect(lost).toMatchObject({ isReady: false, state: "lapsed", lapse: { by: "misses", at: 16 }, wanted: 12 });
    expect(lost.message).toBe(
      "No longer ready: too many misses since it was shown, the last at attempt 16. 12 openings in a row make you ready again.",
    );
    const again = mastery(skill, tries([...openings(12), ...misses(4), ...openings(12)]));
    expect(again).toMatchObject({ isReady: true, shownAt: 28 });
  });

  test("after many misses with openings between, too, but not after a rare one", () => {
    const half = [...openings(12), ...Array.from({ length: 20 }, (_, i) => i % 2 === 0)];
    expect(mastery(skill, tries(half)).state).toBe("lapsed");
    const rare = [...openings(12), ...Array.from({ length: 200 }, (_, i) => i % 10 !== 0)];
    expect(mastery(skill, tries(rare)).state).toBe("ready");
  });

  test("after the days without practice that were chosen, or never", () => {
    const shown = tries(openings(12));
    const at = (days: number, rule = MASTERY_RULE) => mastery(skill, shown, { rule, now: NOON + 20 + days * DAY });
    expect(at(90).state).toBe("ready");
    expect(at(91)).toMatchObject({ state: "lapsed", lapse: { by: "time", days: 91 }, wanted: 12, progress: 0 });
    expect(at(91).message).toBe("No longer ready: no practice for 91 days. 12 openings in a row make you ready again.");
    expect(at(5000, { ...MASTERY_RULE, lapseDays: null }).state).toBe("ready");
    expect(at(31, { ...MASTERY_RULE, lapseDays: 30 }).state).toBe("lapsed");
    const later = [...shown, ...tries([true], NOON + 200 * DAY)];
    expect(mastery(skill, later)).toMatchObject({ state: "lapsed", wanted: 11 });
  });

  test("with a declaration alone, from its day on", () => {
    const declaration = declarationOf("tavro", skill, tries(openings(12))) ?? undefined;
    expect(mastery(skill, [], { declaration, now: NOON + 91 * DAY + 20 }).state).toBe("lapsed");
    expect(mastery(skill, tries(misses(4), NOON + DAY), { declaration }).state).toBe("lapsed");
  });
});

describe("the rule", () => {
  test("is taken from storage only where it makes sense", () => {
    expect(masteryRuleSchema.safeParse(MASTERY_RULE).success).toBe(true);
    for (const other of [
      { adequateFailureRate: 0.3 },
      { adequateFailureRate: 0 },
      { inadequateFailureRate: 1 },
      { minimumAttempts: 0 },
      { minimumAttempts: 1.5 },
      { lapseDays: 0 },
    ]) {
      expect(masteryRuleSchema.safeParse({ ...MASTERY_RULE, ...other }).success, JSON.stringify(other)).toBe(false);
    }
  });

  test("is told in words", () => {
    expect(ruleSentence(MASTERY_RULE)).toBe(
      "Ready means: after at least 12 attempts, the results fit someone who misses 1 in 10 much better than someone who misses 3 in 10. Readiness is lost after several misses close together or after 90 days without practice.",
    );
    expect(ruleSentence({ ...MASTERY_RULE, adequateFailureRate: 0.05, lapseDays: null })).toMatch(
      /misses 5 in 100 much better than .* close together\.$/,
    );
  });
});

/**
 * The rule of readiness told anew and plainly, for the judge: counts of log-likelihood, restarted at 0, read from the
 * text of the rule and from nothing of the source.
 */
function imaginedLearner(failureRate: number, attempts: number, chance: () => number) {
  const [up, down] = [Math.log(0.9 / 0.7), Math.log(0.3 / 0.1)];
  let score = 0;
  for (let attempt = 1; attempt <= attempts; attempt += 1) {
    score = chance() < failureRate ? Math.max(score - down, 0) : score + up;
    if (score >= 3) return attempt;
  }
  return Number.POSITIVE_INFINITY;
}

/** How many attempts a ready person of a rate of misses keeps readiness, told plainly. */
function attemptsUntilLost(failureRate: number, attempts: number, chance: () => number) {
  const [up, down] = [Math.log(0.9 / 0.7), Math.log(0.3 / 0.1)];
  let against = 0;
  for (let attempt = 1; attempt <= attempts; attempt += 1) {
    against = chance() < failureRate ? against + down : Math.max(against - up, 0);
    if (against >= 4) return attempt;
  }
  return Number.POSITIVE_INFINITY;
}

describe("how often the rule errs", () => {
  const LEARNERS = 20_000;
  const simulated = (walk: typeof imaginedLearner, failureRate: number, within: number) => {
    const chance = seededChance(Math.round(1000 * failureRate) + within);
    const ended = Array.from({ length: LEARNERS }, () => walk(failureRate, within, chance)).filter(Number.isFinite);
    // 99.99 %: one in ten thousand such tests would fail by chance.
    return wilsonInterval(ended.length, LEARNERS, 0.9999);
  };

  test.each([
    [0.05, 18],
    [0.1, 18],
    [0.1, 60],
    [0.2, 60],
    [0.3, 30],
    [0.3, 100],
    [0.4, 100],
  ])("at a miss rate of %d within %d attempts is as an independent simulation finds it", (failureRate, within) => {
    const exact = readyShares(MASTERY_RULE, failureRate, within).at(-1) ?? -1;
    const { low, high } = simulated(imaginedLearner, failureRate, within);
    expect(exact).toBeGreaterThanOrEqual(low);
    expect(exact).toBeLessThanOrEqual(high);
    const lost = lapseShares(MASTERY_RULE, failureRate, within).at(-1) ?? -1;
    const found = simulated(attemptsUntilLost, failureRate, within);
    expect(lost).toBeGreaterThanOrEqual(found.low);
    expect(lost).toBeLessThanOrEqual(found.high);
  });

  test("is 41 % within 100 attempts at 3 in 10, and 11 % within 30; half at 1 in 10 are ready by attempt 18", () => {
    const shares = readyShares(MASTERY_RULE, 0.3, 100);
    expect(shares[99]).toBeCloseTo(0.4105, 3);
    expect(shares[29]).toBeCloseTo(0.107, 3);
    expect(luckyShare(MASTERY_RULE, 100)).toBeCloseTo(shares[99] ?? 0, 9);
    expect(masteryCharacteristic([0.1, 0.4], 100)).toMatchObject([{ medianAttempts: 18 }, { medianAttempts: null }]);
  });

  test("is less with more attempts asked for at least, and grows with the attempts", () => {
    const more = readyShares({ ...MASTERY_RULE, minimumAttempts: 30 }, 0.3, 60);
    const usual = readyShares(MASTERY_RULE, 0.3, 60);
    expect(more.slice(0, 29).every((share) => share === 0)).toBe(true);
    expect(more.every((share, i) => share <= (usual[i] ?? 0))).toBe(true);
    expect(usual).toEqual(usual.toSorted((a, b) => a - b));
  });

  test("calls fewer ready the more they miss", () => {
    const rows = masteryCharacteristic([0, 0.05, 0.1, 0.2, 0.3, 0.5, 1], 30);
    const shares = rows.map(({ readyShare }) => readyShare);
    expect(shares).toEqual(shares.toSorted((a, b) => b - a));
    expect([shares[0], shares.at(-1)]).toEqual([1, 0]);
    expect([rows[0]?.medianAttempts, rows.at(-1)?.medianAttempts]).toEqual([12, null]);
  });
});

describe("the order of practice", () => {
  test("moves from blocked to serial to random, and help fades, never back", () => {
    const orders = ["blocked", "serial", "random"];
    const helps = ["full", "counts", "silent"];
    const progress = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(progress, progress, (one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        expect(orders.indexOf(practiceOrder(less))).toBeLessThanOrEqual(orders.indexOf(practiceOrder(more)));
        expect(helps.indexOf(fadedHelp(less))).toBeLessThanOrEqual(helps.indexOf(fadedHelp(more)));
      }),
    );
    expect([practiceOrder(0), practiceOrder(0.5), practiceOrder(1)]).toEqual(orders);
    expect([0, 0.5, 1].map(fadedHelp)).toEqual(helps);
  });
});
