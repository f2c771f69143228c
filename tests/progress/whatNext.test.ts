import { describe, expect, test } from "vitest";
import { declarationOf } from "../../src/progress/mastery";
import { missesToRedo } from "../../src/progress/missesToRedo";
import { REFRESH_NOTE, refresh } from "../../src/progress/refresh";
import { whatNext } from "../../src/progress/whatNext";
import type { JobRecord } from "../../src/records/jobRecord";
import { aJob, anAttempt, NOON } from "../support/logbookRecords";

const DAY = 86_400_000;
const day = (number: number, outcomes: readonly boolean[], other = {}) =>
  outcomes.map((opened, i) =>
    anAttempt(`${number}-${i}`, { opened, startedAt: NOON + number * DAY + i * 60_000, ...other }),
  );
const good = [true, true, true];

describe("refresh practice", () => {
  test("waits longer after each good day, and is due then", () => {
    const once = refresh(day(0, good), NOON);
    const twice = refresh([...day(0, good), ...day(3, good)], NOON + 3 * DAY);
    expect(once?.isDue).toBe(false);
    expect(once?.inDays).toBeGreaterThanOrEqual(1);
    expect(twice?.inDays).toBeGreaterThan(once?.inDays ?? 99);
    expect(refresh(day(0, good), once?.dueAt ?? 0)).toMatchObject({ isDue: true, inDays: 0 });
  });

  test("comes sooner after a bad day than after a good one", () => {
    const dueAfter = (outcomes: readonly boolean[]) => {
      const attempts = [...day(0, good), ...day(5, good), ...day(20, outcomes)];
      return refresh(attempts, NOON + 20 * DAY)?.inDays ?? 0;
    };
    // Forgotten, hard, good, easy.
    const waits = [[true, false, false], [true, false, true], good, [...good, ...good]].map(dueAfter);
    expect(waits).toEqual([...new Set(waits)].sort((a, b) => a - b));
  });

  test("counts a day once, however many attempts it has", () => {
    const scattered = [...day(0, good), anAttempt("late", { startedAt: NOON + 6 * 3_600_000 })];
    expect(refresh(scattered, NOON)?.inDays).toBe(refresh(day(0, good), NOON)?.inDays);
  });

  test("goes by local days: late in the evening is not yet tomorrow", () => {
    const evening = NOON - (NOON % DAY) + 23.5 * 3_600_000;
    const late = [anAttempt("a", { startedAt: evening }), anAttempt("b", { startedAt: evening + 3_600_000 })];
    // Two days in Greenwich, one day an hour or more west of it.
    expect(refresh(late, evening + 3_600_000, 0)?.reason).toContain("opened 1 of 1");
    // An hour east of Greenwich midnight comes an hour earlier: half past ten and half past eleven are two days.
    const east = late.map((one) => ({ ...one, startedAt: one.startedAt - 3_600_000 }));
    expect(refresh(east, evening, -60)?.reason).toContain("opened 1 of 1");
    expect(refresh(east, evening, 0)?.reason).toContain("opened 2 of 2");
    const west = refresh(late, evening + 3_600_000, 300);
    expect(west?.reason).toContain("opened 2 of 2");
    expect(((west?.dueAt ?? 0) - 300 * 60_000) % DAY).toBe(0);
  });

  test("gives its reason in a sentence, with days", () => {
    expect(refresh(day(0, good), NOON)?.reason).toMatch(
      /^You last practiced this today and opened 3 of 3\. Practice again by [A-Z][a-z]+ \d+(, \d{4})?\.$/,
    );
    expect(refresh(day(0, [true, false]), NOON + 40 * DAY)?.reason).toMatch(
      /^You last practiced this 40 days ago and opened 1 of 2\. Practice again today: a few tries are enough\.$/,
    );
    expect(refresh([], NOON)).toBeNull();
  });

  test("names the day that is due, and claims nothing of memory in a hand", () => {
    const found = refresh(day(0, good), NOON);
    const due = new Intl.DateTimeFormat("en-US", { day: "numeric", month: "long", timeZone: "UTC" });
    expect(found?.reason).toContain(due.format(found?.dueAt));
    for (const later of [0, 3, 40, 1000]) {
      const reason = refresh(day(0, good), NOON + later * DAY)?.reason;
      expect(reason).not.toMatch(/recall|remember|memory|forg|reckon|would still have/i);
    }
    expect(REFRESH_NOTE).toMatch(/FSRS.*rule of thumb/);
  });
});

describe("misses to redo", () => {
  test("are those not opened since, with the same numbers and settings", () => {
    const first = anAttempt("first", { opened: false, combination: [1, 2, 3] });
    const second = anAttempt("second", { opened: false, combination: [4, 5, 6] });
    const helped = anAttempt("helped", { opened: true, combination: [1, 2, 3], help: "full" });
    const redone = anAttempt("redone", { opened: true, combination: [4, 5, 6] });
    expect(missesToRedo([first, second, helped]).map(({ id }) => id)).toEqual(["second", "first"]);
    expect(missesToRedo([first, second, redone]).map(({ id }) => id)).toEqual(["first"]);
    expect(missesToRedo([second, redone, { ...second, id: "again" }]).map(({ id }) => id)).toEqual(["again"]);
  });
});

describe("what next among jobs", () => {
  const job = (id: string, isRight: boolean, other: Partial<JobRecord> = {}) =>
    aJob(id, {
      isRight,
      startedAt: NOON + Number(id) * 60_000,
      missed: isRight ? [] : ["way-out", "record"],
      ...other,
    });
  const many = (count: number) => Array.from({ length: count }, (_, k) => job(String(k), true));

  test("is the last one again while it was not right, then to go on", () => {
    const { suggestions, order } = whatNext([], [], NOON, 0, [job("1", true), job("2", false)]);
    expect(suggestions.map(({ kind, skill, misses }) => [kind, skill, misses])).toEqual([
      ["redo-misses", { profileId: "three-wheel", exercise: "change" }, []],
      ["go-on", { profileId: "three-wheel", exercise: "change" }, []],
    ]);
    expect(suggestions[0]?.reason).toBe(
      "The last one was not right. You missed 2 things. Do it again from the beginning.",
    );
    expect(suggestions[1]?.reason).toMatch(/^Not ready yet: 12 right jobs in a row would make you ready\. /);
    expect(order).toBe("blocked");
    expect(whatNext([], [], NOON, 0, [job("1", false), job("2", true)]).suggestions.map(({ kind }) => kind)).toEqual([
      "go-on",
    ]);
  });

  test("is what is due again, in words of jobs", () => {
    const { suggestions } = whatNext([], [], NOON + 80 * DAY, 0, many(12));
    expect(suggestions.map(({ kind }) => kind)).toEqual(["refresh"]);
    expect(suggestions[0]?.reason).toMatch(
      /^You last practiced this 80 days ago and got 12 of 12 right\. Practice again today/,
    );
  });

  test("keeps one kind of job from another, and leaves the order of practice to dialing", () => {
    const jobs = [job("1", false), job("2", true, { kind: "handover" }), job("3", true, { profileId: "two-wheel" })];
    const { suggestions } = whatNext([], [], NOON, 0, jobs);
    expect(suggestions.filter(({ kind }) => kind === "redo-misses")).toHaveLength(1);
    expect(suggestions.filter(({ kind }) => kind === "go-on")).toHaveLength(3);
    const shown = day(
      0,
      Array.from({ length: 12 }, () => true),
    );
    expect(whatNext(shown, [], NOON, 0, jobs).order).toBe("random");
  });
});

describe("what next", () => {
  test("offers misses first, then what is not shown, then what is due", () => {
    const shown = day(
      0,
      Array.from({ length: 12 }, () => true),
    );
    const other = day(1, [true, false], { profileId: "dial-encoder" });
    const kept = declarationOf("tavro", { profileId: "three-wheel", exercise: "open" }, shown);
    const { suggestions, order } = whatNext([...shown, ...other], kept ? [kept] : [], NOON + 80 * DAY);
    expect(suggestions.map(({ kind, skill }) => [kind, skill.profileId])).toEqual([
      ["redo-misses", "dial-encoder"],
      ["go-on", "dial-encoder"],
      ["refresh", "three-wheel"],
    ]);
    const lapsed = whatNext(shown, kept ? [kept] : [], NOON + 300 * DAY).suggestions;
    expect(lapsed.map(({ kind }) => kind)).toEqual(["go-on"]);
    expect(lapsed[0]?.reason).toMatch(/^No longer ready: no practice for 29\d days\./);
    expect(suggestions.every(({ reason }) => /\.$/.test(reason))).toBe(true);
    expect(order).toBe("blocked");
  });

  test("offers nothing of its own where nothing was practiced, or all is well", () => {
    expect(whatNext([], [], NOON)).toMatchObject({ suggestions: [], order: "blocked" });
    const shown = day(
      0,
      Array.from({ length: 12 }, () => true),
    );
    expect(whatNext(shown, [], NOON)).toMatchObject({ suggestions: [], order: "random" });
  });
});
