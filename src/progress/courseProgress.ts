import { DrillError } from "../drill/drillError";
import type { Lesson } from "../drill/sheet/course";
import { sheetSha256 } from "../drill/sheet/sheetFingerprint";
import type { SittingRecord } from "../records/records";
import { readSittingRecord } from "../records/sitting/readSittingRecord";

/** What of a sitting says that a lesson is done. */
export interface SatSheet {
  readonly title: string;
  /** SHA-256 of what counts in the sheet that was sat, 64 hexadecimal digits. */
  readonly sheetSha256: string;
  /** Milliseconds since 1970. */
  readonly startedAt: number;
}

/** The sheet of a sitting that was finished, by its own record; null where it was not, or where no record can be read. */
export function finishedSheet({ state, body, startedAt }: SittingRecord): SatSheet | null {
  if (state !== "finished") return null;
  try {
    const { sheet } = readSittingRecord(body).record;
    return { title: sheet.title, sheetSha256: sheetSha256(sheet), startedAt };
  } catch (error) {
    if (error instanceof DrillError) return null;
    throw error;
  }
}

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
 * How far someone is. A lesson is done once its very sheet was sat to the end, whatever the verdict: a mark to find the way
 * by, and nothing is locked. An eased sheet of the same title is not the lesson.
 *
 * @param finished - sheets of one person's finished sittings, in any order
 */
export function courseProgress(course: readonly Lesson[], finished: readonly SatSheet[]): CourseProgress {
  const lessons = course.map((lesson) => {
    const { title } = lesson.sheet;
    const sha256 = sheetSha256(lesson.sheet);
    const times = finished
      .filter((sat) => sat.title === title && sat.sheetSha256 === sha256)
      .map(({ startedAt }) => startedAt);
    return { lesson, doneAt: times.length === 0 ? null : Math.min(...times) };
  });
  return {
    lessons,
    next: lessons.find(({ doneAt }) => doneAt === null)?.lesson ?? null,
    done: lessons.filter(({ doneAt }) => doneAt !== null).length,
  };
}
