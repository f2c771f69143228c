import type * as z from "zod/mini";
import type { dueAnswer } from "../../school/wire/assignmentsWire";
import { countText } from "../../wording/amountWords";
import { clockText, dayText, shortDayText } from "../parts/moments";
import type { Trouble } from "./page/sendingState";
import { WHY } from "./sendingWords";

/** An assignment as a bench knows it. */
export type Due = z.output<typeof dueAnswer>["due"][number];

const momentWords = (moment: number) => `${shortDayText(moment)} ${clockText(moment)}`;

const OUTCOMES = {
  passed: "passed",
  failed: "not passed",
  "not shown yet": "not shown yet",
  "broken-off": "broken off",
} as const;

/** When it can be begun, and how often, in few words. */
export function dueSentence({ state, from, until, left }: Due): string {
  switch (state) {
    case "not-yet":
      return `Opens ${momentWords(from)}.`;
    case "over":
      return `Closed ${momentWords(until)}.`;
    case "used-up":
      return "No attempts left.";
    case "open":
      return `Until ${momentWords(until)}. ${left === null ? "As often as you like." : `${countText(left, "attempt")} left.`}`;
  }
}

/** What the latest sitting came to; null where none was begun. */
export function latestSentence({ sittings }: Due): string | null {
  const latest = sittings.at(-1);
  if (latest === undefined) return null;
  if (latest.receivedAt === null) return "Your last one is not at the server yet.";
  if (latest.outcome === null)
    return "Your last one was sent, but something in it does not agree. Ask your instructor.";
  return `Your last one: ${OUTCOMES[latest.outcome]}, by the server's own marking.`;
}

/** When the server said that, and why it says nothing newer. @param at - of the bench's clock, as `now` */
export function asOfSentence(at: number, now: number, why: Trouble["kind"]): string {
  const isToday = dayText(at) === dayText(now);
  return `As of ${isToday ? clockText(at) : momentWords(at)}, ${WHY[why]}.`;
}

/** What can be done without the class server, in sentences. */
export const WITHOUT_SERVER =
  "A test or practice from your class begins with its sheet from the class server: wait for the network. One that is under way on this bench goes on. You can practice at the bench; your records are sent when the network is back.";

/** Where nothing was ever known, a sentence. */
export const NOTHING_KNOWN = "The class server does not answer. What is due shows here when the network is back.";
