import type * as z from "zod/mini";
import { dueState } from "../../../school/assignments/assignment";
import type { assignmentAnswer } from "../../../school/wire/assignmentsWire";
import { countText } from "../../../wording/amountWords";
import { clockText, dayText } from "../../parts/moments";

/** An assignment as an instructor sees it. */
export type Assignment = Readonly<z.infer<typeof assignmentAnswer>>;

/** "Nov 24, 2026, 14:05" */
export const momentText = (moment: number): string => `${dayText(moment)}, ${clockText(moment)}`;

/** What it is for. */
export const KIND_WORDS = { practice: "Practice", test: "Test" } as const;

/** Whether it can be begun now. @param now - milliseconds since 1970 */
export function standingText(one: Assignment, now: number): string {
  if (one.endedAt !== null) return `ended early, ${momentText(one.endedAt)}`;
  const state = dueState(one, 0, now);
  if (state === "over") return "over";
  return state === "not-yet" ? "not open yet" : "open now";
}

/** Whom it is for. */
export const forText = ({ people }: Assignment): string =>
  people === null ? "the whole class" : countText(people.length, "person", "people");

/** How often each person may begin it. */
export const attemptsText = ({ attempts }: Assignment): string =>
  attempts === null ? "no limit" : countText(attempts, "attempt");

/** How many sittings there are of it. */
export const soFarText = ({ begun, received }: Assignment): string =>
  begun === 0 ? "nobody began" : `${begun} begun, ${received} ended`;
