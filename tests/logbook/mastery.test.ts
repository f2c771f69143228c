import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { declarationOf, mastery, openingsWanted } from "../../src/logbook/mastery";
import { masteryCharacteristic } from "../../src/logbook/masteryCharacteristic";
import { practiceOfJob } from "../../src/logbook/practice";
import { fadedHelp, practiceOrder } from "../../src/logbook/practiceOrder";
import { seededChance } from "../../src/statistics/chance";
import { aJob, anAttempt, NOON } from "../support/logbookRecords";

const skill = { profileId: "three-wheel", exercise: "open" };
const tries = (outcomes: readonly boolean[]) =>
  outcomes.map((opened, i) => anAttempt(`a${i}`, { opened, startedAt: NOON + i }));
const outcomes = fc.array(fc.boolean(), { maxLength: 80 });
const openings = (count: number) => Array.from({ length: count }, () => true);

describe("mastery of a job", () => {
  const change = { profileId: "three-wheel", exercise: "change" };
  const jobs = (count: number) =>
    Array.from({ length: count }, (_, i) => practiceOfJob(aJob(`j${i}`, { startedAt: NOON + i })));

  test("is shown by as many right ones in a row, and told in words of jobs", () => {
    expect(mastery(change, []).message).toBe("No job yet: 12 right in a row show it.");
    expect(mastery(change, jobs(11))).toMatchObject({ isDeclared: false });
    expect(mastery(change, jobs(11)).message).toContain("one more right would show it");
    expect(mastery(change, jobs(12))).toMatchObject({ isDeclared: true, declaredAt: 12 });
    expect(mastery(change, jobs(12)).message).toMatch(/^You have shown this at job 12: .* It stays shown\.$/);
    expect(declarationOf("tavro", change, jobs(12))).toMatchObject({ exercise: "change", attempts: 12 });
  });

  test("is set back by one that is not right", () => {
    const after = [...jobs(6), practiceOfJob(aJob("bad", { isRight: false })), ...jobs(6)];
    expect(mastery(change, after).isDeclared).toBe(false);
  });
});

describe("mastery", () => {
  test("is shown by as many openings in a row as its sentence says", () => {
    expect(openingsWanted(0)).toBe(12);
    expect(mastery(skill, tries(openings(11)))).toMatchObject({ isDeclared: false });
    expect(mastery(skill, tries(openings(11))).message).toContain("1 opening would show it");
    expect(mastery(skill, tries(openings(12)))).toMatchObject({ isDeclared: true, declaredAt: 12, progress: 1 });
  });

  test("needs what the sentence asks for, wherever one stands", () => {
    fc.assert(
      fc.property(outcomes, (past) => {
        const before = mastery(skill, tries(past));
        if (before.isDeclared) return;
        const wanted = openingsWanted(before.scores.at(-1) ?? 0);
        expect(mastery(skill, tries([...past, ...openings(wanted - 1)])).isDeclared).toBe(false);
        expect(mastery(skill, tries([...past, ...openings(wanted)])).isDeclared).toBe(true);
      }),
    );
  });

  test("is never taken back, neither by misses nor by attempts that are gone", () => {
    fc.assert(
      fc.property(outcomes, (after) => {
        const shown = tries(openings(12));
        const kept = declarationOf("tavro", skill, shown);
        expect(kept).toMatchObject({ attempts: 12, declaredAt: NOON + 11 });
        expect(mastery(skill, tries([...openings(12), ...after])).declaredAt).toBe(12);
        expect(mastery(skill, tries(after), kept ?? undefined)).toMatchObject({ isDeclared: true, declaredAt: 12 });
      }),
    );
  });

  test("is told in one sentence or two, before the first attempt too", () => {
    for (const past of [[], [true], openings(11), openings(20)]) {
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

describe("the operating characteristic", () => {
  const chance = seededChance(2008);
  const setting = { attempts: 30, learners: 10_000 };

  test("is that of the page on learning: 18 attempts at 10 %, and 11 % false passes within 30 at 30 %", () => {
    const [bad] = masteryCharacteristic({ ...setting, failureRates: [0.3] }, chance);
    expect(bad?.interval.low).toBeLessThan(0.12);
    expect(bad?.interval.high).toBeGreaterThan(0.1);
    const [good] = masteryCharacteristic({ ...setting, attempts: 200, failureRates: [0.1] }, chance);
    expect(good?.medianAttempts).toBe(18);
  });

  test("declares fewer the more they fail", () => {
    const rows = masteryCharacteristic({ ...setting, failureRates: [0, 0.05, 0.1, 0.2, 0.3, 0.5, 1] }, chance);
    const shares = rows.map(({ declaredShare }) => declaredShare);
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
