import lessons from "../../../shared/lessons.json" with { type: "json" };
import type { LessonGlance } from "./lessonGlance";

/** The shipped course at a glance: made from its sheets by `npm run schema`, so that no page reads them to list them. */
export const SHIPPED_LESSONS: readonly LessonGlance[] = lessons;
