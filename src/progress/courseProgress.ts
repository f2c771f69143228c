import type { LessonGlance } from "../drill/course/lessonGlance";

/** What of a sitting says that a lesson is done. */
export interface SatSheet {
  readonly title: string;
  /** SHA-256 of what counts in the sheet that was sat, 64 hexadecimal digits. */
  readonly sheetSha256: string;
  /** Milliseconds since 1970. */
  readonly startedAt: number;
}

/** A lesson, and whether this person has been through it. */
export interface LessonState {
  readonly lesson: LessonGlance;
  /** When it was finished for the first time, milliseconds since 1970; null before. */
  readonly doneAt: number | null;
}

/** How far one person is in a course. */
export interface CourseProgress {
  readonly lessons: readonly LessonState[];
  /** The first lesson that is not done; null when all are. */
  readonly next: LessonGlance | null;
  readonly done: number;
}

/** Whether a sheet that was sat is that of a lesson, as it is or as it was in an earlier version. */
const isOf = ({ title, sheetSha256: hash }: SatSheet, lesson: LessonGlance) =>
  title === lesson.title && (hash === lesson.sheetSha256 || lesson.earlier?.includes(hash) === true);

/**
 * How far someone is. A lesson is done once its very sheet was sat to the end, whatever the verdict: a mark to find the way
 * by, and nothing is locked. An eased sheet of the same title is not the lesson.
 *
 * @param finished - sheets of one person's finished sittings, in any order
 */
export function courseProgress(course: readonly LessonGlance[], finished: readonly SatSheet[]): CourseProgress {
  const lessons = course.map((lesson) => {
    const times = finished.filter((sat) => isOf(sat, lesson)).map(({ startedAt }) => startedAt);
    return { lesson, doneAt: times.length === 0 ? null : Math.min(...times) };
  });
  return {
    lessons,
    next: lessons.find(({ doneAt }) => doneAt === null)?.lesson ?? null,
    done: lessons.filter(({ doneAt }) => doneAt !== null).length,
  };
}
