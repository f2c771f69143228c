import type { CourseProgress } from "../../progress/courseProgress";
import { dayText } from "../parts/moments";
import { lessonAddress, lessonSize } from "./lessonWords";

/** The lessons in order, each free to be chosen; a check marks those that are done. */
export function CourseList({ lessons, next, done }: CourseProgress) {
  return (
    <section className="course" aria-labelledby="course">
      <h2 id="course" className="mb-4 text-lead">
        The course{" "}
        <small className="ml-3 phone:ml-0 phone:block">
          {done === 0 ? "" : `${done} of ${lessons.length} done. `}Take the lessons in order, or choose any of them.
        </small>
      </h2>
      <ol className="tiles-[480px] plain gap-x-6">
        {lessons.map(({ lesson, doneAt }) => (
          <li key={lesson.number} className="ruled" data-done={doneAt !== null || undefined}>
            <a
              className="grid grid-cols-[34px_minmax(0,1fr)] gap-x-4 px-3 py-4 rounded-corner no-underline hover:bg-well"
              href={lessonAddress(lesson)}
              aria-current={lesson === next ? "step" : undefined}
            >
              <span
                className="course-number row-span-2 grid place-content-center w-[34px] h-[34px] border border-line rounded-full font-semibold"
                aria-hidden="true"
              >
                {doneAt === null ? lesson.number : "✓"}
              </span>
              <span>
                <b className="block font-semibold">
                  <span className="visually-hidden">Lesson {lesson.number}: </span>
                  {lesson.title}
                </b>
                <span>{lesson.teaches}</span>
              </span>
              <small>
                {lessonSize(lesson)}
                {lesson.isTest && " · a test"}
                {doneAt !== null && ` · done ${dayText(doneAt)}`}
              </small>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}
