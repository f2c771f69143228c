import type { Sheet } from "../../drill/sheet/sheet";
import { sittingPlan } from "../../drill/sitting/sittingPlan";
import { countText } from "../../wording/amountWords";
import { asksForRealDial } from "./realDialAsked";
import { spanText } from "./sheetWords";

/** What a sheet takes, in a few words. */
export function sheetSizeText(sheet: Sheet): string {
  const { tries, questions, timeLimit_ms } = sittingPlan(sheet);
  const parts = [countText(tries, "try", "tries")];
  if (questions > 0) parts.push(countText(questions, "question", "questions"));
  if (timeLimit_ms !== null) parts.push(`at most ${spanText(timeLimit_ms / 1000)}`);
  if (asksForRealDial(sheet)) parts.push("a real dial to turn");
  return parts.join(" · ");
}
