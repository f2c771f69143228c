import { SHIPPED_LESSONS } from "../../drill/course/shippedLessons";
import { courseProgress } from "../../progress/courseProgress";

/** The course before anybody has practiced here, and while the logbook is still opening. */
export const FIRST_COURSE = courseProgress(SHIPPED_LESSONS, []);
