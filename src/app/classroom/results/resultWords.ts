import type * as z from "zod/mini";
import type { classResults, difficultyAnswer } from "../../../school/wire/assignmentsWire";
import { countText } from "../../../wording/amountWords";

/** Sheets by people. */
export type ClassResults = z.output<typeof classResults>;

/** What one person came to at one sheet. */
export type PersonsResult = ClassResults["people"][number]["results"][number];

/** One sitting, as it is known now. */
export type SittingLine = NonNullable<PersonsResult["latest"]>;

/** How one question or station proved. */
export type ItemFigures = z.output<typeof difficultyAnswer>["questions"][number];

const OUTCOMES = {
  passed: "Passed",
  failed: "Not passed",
  "not shown yet": "Not shown yet",
  "broken-off": "Broken off",
} as const;

const percent = (share: number): string => `${Math.round(100 * share)} %`;

/** What a sitting came to, in few words: "Passed, 92 % right". */
export function outcomeText({ outcome, right, receivedAt }: SittingLine): string {
  if (receivedAt === null) return "Under way, or not sent yet";
  return outcome === null ? "Does not agree" : `${OUTCOMES[outcome]}, ${percent(right)} right`;
}

/** What an instructor should know of a sitting beside its result, each a few words. */
export const markTexts = ({ reloads, isLate, problems, doubted = 0 }: SittingLine): string[] => [
  ...(reloads > 0 ? [countText(reloads, "reload")] : []),
  ...(isLate ? ["sent late"] : []),
  ...(doubted > 0 ? [`turns in doubt in ${countText(doubted, "try", "tries")}`] : []),
  ...(problems > 0 ? [countText(problems, "problem")] : []),
];

/** How hard an item proved, in words with its counts. */
export function difficultyText({ people, share, interval }: ItemFigures): string {
  const range =
    interval === null ? "" : `; the true share lies between ${percent(interval.low)} and ${percent(interval.high)}`;
  return `${percent(share)} right of ${countText(people, "person", "people")}${range}`;
}

/** Whether an item tells those who can from those who cannot, in words. */
export function sortingText({ discrimination, discriminationInterval: sure }: ItemFigures): string {
  if (discrimination === null)
    return "There is nothing to compare: too few people, all with the same result, or nothing else asked.";
  if (sure !== null && sure.low > 0) return "Those who did well elsewhere did well here too.";
  if (sure !== null && sure.high < 0) return "Those who did well elsewhere did badly here. Look at it again.";
  return "These results cannot show whether it goes with the rest.";
}
