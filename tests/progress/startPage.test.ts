import { describe, expect, test } from "vitest";
import { SHIPPED_COURSE } from "../../src/drill/course/shippedCourse";
import { SHIPPED_LESSONS } from "../../src/drill/course/shippedLessons";
import { parseSheet } from "../../src/drill/sheet/parseSheet";
import type { Sheet } from "../../src/drill/sheet/sheet";
import { sheetSha256 } from "../../src/drill/sheet/sheetFingerprint";
import { sittingPlan } from "../../src/drill/sitting/sittingPlan";
import { courseProgress } from "../../src/progress/courseProgress";
import { dailyPractice } from "../../src/progress/dailyPractice";
import { numberToBeat } from "../../src/progress/numberToBeat";
import { whatNext } from "../../src/progress/whatNext";
import { anAttempt, NOON, stopsOf } from "../support/logbookRecords";

const DAY = 86_400_000;
const lessonSheet = (title: string) => {
  const found = SHIPPED_COURSE.find(({ sheet }) => sheet.title === title);
  if (found === undefined) throw new Error(`no lesson ${title}`);
  return found.sheet;
};
const sat = (sheet: Sheet, startedAt = NOON) => ({ title: sheet.title, sheetSha256: sheetSha256(sheet), startedAt });

describe("how far someone is in the course", () => {
  test("a newcomer begins at lesson 1", () => {
    const { next, done } = courseProgress(SHIPPED_LESSONS, []);
    expect(next?.number).toBe(1);
    expect(done).toBe(0);
  });

  test("a finished sitting of its sheet marks a lesson; an eased sheet of its title, or one like it, does not", () => {
    const eased = lessonSheet("Past it");
    const { lessons, next, done } = courseProgress(SHIPPED_LESSONS, [
      sat(lessonSheet("Round and round"), NOON + DAY),
      sat(lessonSheet("Round and round"), NOON),
      sat({ ...eased, stations: eased.stations.map((one) => ({ ...one, repetitions: 1 })) }),
      sat({ ...lessonSheet("Three, not four"), title: "A sheet of the instructor's" }),
      sat(lessonSheet("Talk to me")),
    ]);
    expect(lessons.flatMap(({ lesson, doneAt }) => (doneAt === null ? [] : [[lesson.number, doneAt]]))).toEqual([
      [1, NOON],
      [5, NOON],
    ]);
    expect(done).toBe(2);
    expect(next?.number).toBe(2);
  });

  test("a lesson that was done by its sheet of an earlier version stays done, and no other sheet has that one's mark", () => {
    // What counted in it before it had a rule for devices.
    const sheetSha256 = "da61fb0a51866b55d6637afc1e468aa9c82fd948e56b93d8209de67f8454df76";
    const doneBy = (title: string) =>
      courseProgress(SHIPPED_LESSONS, [{ title, sheetSha256, startedAt: NOON }]).lessons.flatMap(
        ({ lesson, doneAt }) => (doneAt === null ? [] : [lesson.title]),
      );
    expect(doneBy("Friday sitting")).toEqual(["Friday sitting"]);
    expect(doneBy("Past it")).toEqual([]);
  });

  test("after the last lesson there is no next one", () => {
    const all = SHIPPED_COURSE.map(({ sheet }) => sat(sheet));
    expect(courseProgress(SHIPPED_LESSONS, all)).toMatchObject({ next: null, done: SHIPPED_COURSE.length });
  });
});

describe("today's two minutes", () => {
  const afterADay = (...attempts: ReturnType<typeof anAttempt>[]) => dailyPractice(whatNext(attempts, [], NOON + DAY));

  test("nothing was practiced: nothing to offer", () => {
    expect(afterADay()).toBeNull();
  });

  test("asks for at most three misses again, latest first, and is a sound sheet", () => {
    const combinations = [
      [10, 40, 70],
      [15, 45, 75],
      [21, 51, 81],
      [26, 56, 83],
    ] as const;
    const misses = combinations.map((combination, k) =>
      anAttempt(`miss-${k}`, { opened: false, combination: [...combination], startedAt: NOON + k * 60_000 }),
    );
    const daily = afterADay(...misses);
    expect(daily).toMatchObject({ misses: 3, skills: 0 });
    const sheet = parseSheet(daily?.sheet);
    expect(sittingPlan(sheet).tries).toBe(3);
    const asked = sheet.stations.flatMap((one) =>
      one.kind === "dialing" && one.combinations.policy === "fixed" ? one.combinations.list : [],
    );
    expect(asked).toEqual([combinations[3], combinations[2], combinations[1]]);
  });

  test("after the misses come tries at what is not shown yet, one each", () => {
    const daily = afterADay(
      anAttempt("one", { opened: false, startedAt: NOON }),
      anAttempt("two", { opened: true, profileId: "two-wheel", combination: [74, 37], startedAt: NOON + 60_000 }),
    );
    expect(daily).toMatchObject({ misses: 1, skills: 2 });
    expect(sittingPlan(parseSheet(daily?.sheet)).tries).toBe(3);
  });
});

describe("the number to beat", () => {
  test("there is none before the first opening", () => {
    expect(numberToBeat([])).toBeNull();
    expect(numberToBeat([anAttempt("a", { opened: false })])).toBeNull();
  });

  test("is the worst stop of the truest opening, at the settings of the latest attempt alone", () => {
    const found = numberToBeat([
      anAttempt("other", { opened: true, help: "silent", stops: stopsOf(0.3) }),
      anAttempt("a", { opened: true, help: "full", stops: stopsOf(0.4, -1.1) }),
      anAttempt("b", { opened: true, help: "full", stops: stopsOf(0.6, -0.8) }),
      anAttempt("missed", { opened: false, help: "full", stops: stopsOf(0.5) }),
    ]);
    expect(found).toMatchObject({ kind: "worst-stop", value: 0.8, setting: { id: "missed" } });
  });

  test("is the longest streak once stops are as true as the eye can read", () => {
    const outcomes = [true, true, false, true, true, true, false];
    const attempts = outcomes.map((opened, k) => anAttempt(`${k}`, { opened, stops: stopsOf(0.1) }));
    expect(numberToBeat(attempts)).toMatchObject({ kind: "streak", value: 3 });
  });
});
