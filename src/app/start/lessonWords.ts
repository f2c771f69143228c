import type { LessonGlance } from "../../drill/course/lessonGlance";
import { countText } from "../../wording/amountWords";

/** The address that opens a lesson. */
export const lessonAddress = ({ sheetId }: LessonGlance) => `#/sittings?sheet=${sheetId}`;

/** "4 minutes, 10 tries": about how long a lesson takes, and how much there is to do. */
export function lessonSize({ minutes, tries, questions }: LessonGlance): string {
  const parts = [countText(minutes, "minute", "minutes"), countText(tries, "try", "tries")];
  if (questions > 0) parts.push(countText(questions, "question", "questions"));
  return parts.join(", ");
}
