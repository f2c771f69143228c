import { harmlessName } from "../../../lock/harmlessText";
import { checkSentences } from "../../../records/sitting/checkWords";
import type { Outcome, SittingShown } from "../../../records/sitting/sittingShown";
import { agreeing } from "../../../wording/amountWords";
import type { RecordFinding } from "../../parts/files/RecordChecker";
import { clockText } from "../../verdicts/sittingWords";

const OUTCOMES: Readonly<Record<Outcome, string>> = {
  passed: "passed",
  failed: "not passed",
  "not shown yet": "not shown yet: the tries leave it open",
  "broken-off": "broken off before the end",
};

/** How a sitting came out, in words; a record that does not check shows nothing. */
export const outcomeText = (outcome: Outcome | null): string =>
  outcome === null ? "none: the record fails its check" : OUTCOMES[outcome];

/** A moment as people read it; the record has it in UTC. */
const momentText = (startedAt: string) =>
  new Date(startedAt).toLocaleString("en-US", { dateStyle: "medium", timeStyle: "short" });

function triesText({ tries, lostTries, check: { replayed } }: SittingShown): string {
  const lost = lostTries === 0 ? "" : `, ${lostTries} lost to a reload`;
  return `${tries}${lost}; ${replayed} replayed from ${agreeing(replayed, "its recording", "their recordings")}`;
}

/** What a checked record says, by name, to be read beside what checking it came to. */
export function shownRows(shown: SittingShown): NonNullable<RecordFinding["says"]> {
  return [
    ["result", outcomeText(shown.outcome)],
    ["sheet", harmlessName(shown.title)],
    ["fingerprint", `${shown.fingerprint} of what counts in the sheet`],
    ["person", shown.person === null ? "nobody is named" : harmlessName(shown.person)],
    ["started", momentText(shown.startedAt)],
    ["worked", clockText(shown.worked_ms)],
    ["tries", triesText(shown)],
    ["pauses", String(shown.pauses)],
    ["reloads", String(shown.reloads)],
    ...(shown.isPractice ? [["seed", "given in the address: this was practice, not a test"] as const] : []),
    ["version", shown.appVersion],
  ];
}

/** A finding for the screen from what may be shown of a record. */
export const findingOf = (shown: SittingShown): RecordFinding => ({
  problems: checkSentences([...shown.check.problems, ...shown.differs]),
  unheld: checkSentences(shown.check.unheld),
  unchecked: checkSentences(shown.check.unchecked),
  says: shownRows(shown),
});
