import type * as z from "zod/mini";
import { dueState } from "../../../school/assignments/assignment";
import type { assignmentAnswer } from "../../../school/wire/assignmentsWire";
import { countText } from "../../../wording/amountWords";
import { clockText, dayText } from "../../parts/moments";
import { shownName } from "../../parts/shownName";

/** An assignment as an instructor sees it. */
export type Assignment = Readonly<z.infer<typeof assignmentAnswer>>;

/** "Nov 24, 2026, 14:05" */
export const momentText = (moment: number): string => `${dayText(moment)}, ${clockText(moment)}`;

/** What it is for. */
export const KIND_WORDS = { practice: "Practice", test: "Test" } as const;

/** Whether it can be begun now. @param now - milliseconds since 1970 */
export function standingText(one: Assignment, now: number): string {
  if (one.endedAt !== null) return `Ended early, ${momentText(one.endedAt)}`;
  const state = dueState(one, 0, now);
  if (state === "over") return "Over";
  return state === "not-yet" ? "Not open yet" : "Open now";
}

/** Most people who are named; more are counted. */
const MOST_NAMED = 3;

/** Whom it is for. @param names - of the class's people, by id */
export function forText({ people }: Assignment, names: ReadonlyMap<string, string>): string {
  if (people === null) return "the whole class";
  const known = people.flatMap((id) => names.get(id) ?? []);
  if (people.length > MOST_NAMED || known.length < people.length) return countText(people.length, "person", "people");
  return known.map(shownName).join(", ");
}

/** For whom there is other extra time than on the roster. */
export const extraText = ({ extraTime }: Assignment): string =>
  extraTime.length === 0 ? "" : `; own extra time for ${countText(extraTime.length, "person", "people")}`;

/** How often each person may begin it. */
export const attemptsText = ({ attempts }: Assignment): string => (attempts === null ? "No limit" : `${attempts}`);

/** How many sittings there are of it. */
export const soFarText = ({ begun, received }: Assignment): string =>
  begun === 0 ? "Nobody has begun" : `${begun} begun, ${received} received`;
