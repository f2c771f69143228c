import { describe, expect, test } from "vitest";
import course from "../../../shared/course.json" with { type: "json" };
import { lessonMinutes, parseCourse } from "../../../src/drill/course/course";
import { lessonGlance } from "../../../src/drill/course/lessonGlance";
import { SHIPPED_COURSE } from "../../../src/drill/course/shippedCourse";
import { SHIPPED_LESSONS } from "../../../src/drill/course/shippedLessons";
import { SHIPPED_SHEETS } from "../../../src/drill/sheet/shippedSheets";

describe("the course", () => {
  test("has every sample sheet once, in their order", () => {
    expect(SHIPPED_COURSE.map(({ sheet }) => sheet.title)).toEqual(SHIPPED_SHEETS.map(({ title }) => title));
    expect(SHIPPED_COURSE.map(({ number }) => number)).toEqual(SHIPPED_SHEETS.map((_, index) => index + 1));
  });

  test("is stored at a glance as its sheets make it (npm run schema)", () => {
    expect(SHIPPED_LESSONS).toEqual(SHIPPED_COURSE.map(lessonGlance));
  });

  test("begins with four minutes of Round and round: ten tries of a number, a draw's time and a spin-off", () => {
    const [first] = SHIPPED_COURSE;
    expect(first?.sheet.title).toBe("Round and round");
    // 10 tries of 12 s and 12 s.
    expect(first?.minutes).toBe(4);
  });

  test("counts every try and every question, and rounds long lessons to five minutes", () => {
    const sheet = SHIPPED_SHEETS[0];
    if (sheet === undefined) throw new Error("no sheet");
    const { times } = course;
    const tries = (repetitions: number) => ({
      ...sheet,
      stations: sheet.stations.map((one) => ({ ...one, repetitions })),
    });
    expect(lessonMinutes(tries(20), times)).toBe(8);
    expect(lessonMinutes(tries(25), times)).toBe(10);
    expect(lessonMinutes(tries(26), times)).toBe(15);
    const questions = { topics: [{ topic: "egress" as const, count: 3 }], passMark: 1 };
    const rules = { pauseAllowed: true, onReload: "resume" as const, clockHideable: true, questions };
    expect(lessonMinutes({ ...tries(10), sitting: rules }, times)).toBe(6);
  });

  test("counts the fitting of a handover that begins in the tray", () => {
    const [lesson] = SHIPPED_COURSE.filter(({ sheet }) => sheet.title === "From the tray to the signature");
    // 2 handovers of 15 min and 7 min, in steps of five.
    expect(lesson?.minutes).toBe(45);
  });

  test("names a lesson whose sheet is not there, and a field that is wrong", () => {
    const lesson = { sheet: "No such sheet", teaches: "Nothing." };
    expect(() => parseCourse({ ...course, lessons: [lesson] }, SHIPPED_SHEETS)).toThrow(
      'course: lesson 1 names "No such sheet", and no sheet has that title',
    );
    expect(() => parseCourse({ ...course, times: { ...course.times, change_s: -1 } }, SHIPPED_SHEETS)).toThrow(
      /course: times\.change_s/,
    );
    expect(() => parseCourse(null, SHIPPED_SHEETS)).toThrow(/^course: /);
  });
});
