import type { Lesson } from "../drill/sheet/course";
import type { SittingRecord } from "./records";

/** A lesson, and whether this person has been through it. */
export interface LessonState {
  readonly lesson: Lesson;
  /** When it was finished for the first time, milliseconds since 1970; null before. */
  readonly doneAt: number | null;
}

/** How far one person is in a course. */
export interface CourseProgress {
  readonly lessons: readonly LessonState[];
  /** The first lesson that is not done; null when all are. */
  readonly next: Lesson | null;
  readonly done: number;
}

/**
 * How far someone is. A lesson is done once a sitting of its sheet was finished, whatever the verdict: a mark to find the
 * way by, and nothing is locked.
 *
 * @param sittings - of one person, in any order
 */
export function courseProgress(
  course: readonly Lesson[],
  sittings: readonly Pick<SittingRecord, "title" | "state" | "startedAt">[],
): CourseProgress {
  const lessons = course.map((lesson) => {
    const times = sittings
      .filter(({ title, state }) => state === "finished" && title === lesson.sheet.title)
      .map(({ startedAt }) => startedAt);
    return { lesson, doneAt: times.length === 0 ? null : Math.min(...times) };
  });
  return {
    lessons,
    next: lessons.find(({ doneAt }) => doneAt === null)?.lesson ?? null,
    done: lessons.filter(({ doneAt }) => doneAt !== null).length,
  };
}
