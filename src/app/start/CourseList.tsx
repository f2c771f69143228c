import type { CourseProgress } from "../../progress/courseProgress";
import { dayText } from "../parts/moments";
import { lessonAddress, lessonSize } from "./lessonWords";

/** The lessons in order, each free to be chosen; a check marks those that are done. */
export function CourseList({ lessons, next, done }: CourseProgress) {
  return (
    <section className="course" aria-labelledby="course">
      <h2 id="course">
        The course{" "}
        <small>
          {done === 0 ? "" : `${done} of ${lessons.length} done. `}Take the lessons in order, or choose any of them.
        </small>
      </h2>
      <ol>
        {lessons.map(({ lesson, doneAt }) => (
          <li key={lesson.number} className={doneAt === null ? undefined : "is-done"}>
            <a href={lessonAddress(lesson)} aria-current={lesson === next ? "step" : undefined}>
              <span className="course-number" aria-hidden="true">
                {doneAt === null ? lesson.number : "✓"}
              </span>
              <span className="course-text">
                <b>
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
