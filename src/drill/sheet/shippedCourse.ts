import course from "../../../shared/course.json" with { type: "json" };
import { parseCourse } from "./course";
import { SHIPPED_SHEETS } from "./shippedSheets";

/** The sample sheets as a course, from the first lesson on. */
export const SHIPPED_COURSE = parseCourse(course, SHIPPED_SHEETS);
