import course from "../../../shared/course.json" with { type: "json" };
import { SHIPPED_SHEETS } from "../sheet/shippedSheets";
import { parseCourse } from "./course";

/** The sample sheets as a course, from the first lesson on. */
export const SHIPPED_COURSE = parseCourse(course, SHIPPED_SHEETS);
