import { harmlessName } from "../../../lock/harmlessText";
import type { SittingRecord } from "../../../records/records";
import { checkedSitting, checkedStanding } from "../../../records/sitting/checkedSitting";
import { checkSentences } from "../../../records/sitting/checkWords";
import type { SittingShown } from "../../../records/sitting/sittingShown";
import type { SittingStanding } from "../../../records/sittingStanding";
import { countText } from "../../../wording/amountWords";
import { clockText, dayText } from "../../parts/moments";
import { APP_VERSION } from "../../parts/page/appVersion";

/** How a sitting stands, in words. */
export const STANDINGS: Readonly<Record<SittingStanding, string>> = {
  running: "Under way",
  "broken-off": "Broken off",
  passed: "Passed",
  failed: "Not passed",
  "not shown yet": "Not shown yet",
};

/** One line of the list of sittings. */
export interface SittingRow {
  readonly day: string;
  readonly clock: string;
  readonly title: string;
  readonly tags: string;
  readonly standing: string;
  readonly tries: string;
  /** What is wrong, what differs, and what was not checked, in sentences. */
  readonly sentences: readonly string[];
  /** Whether something speaks against the record. */
  readonly isWrong: boolean;
}

/** In the place of a verdict, where the record fails its check, and where there is none that can be read. */
const NOT_SOUND = "No result: the record fails its check";
const NO_RECORD = "No result";

/** A list of tries of any body that is not checked: of a sitting under way. */
interface Told {
  readonly progress?: { readonly tries?: unknown } | null;
}

const isLost = (one: unknown) => typeof one === "object" && one !== null && "isBrokenOff" in one && one.isBrokenOff;

/** "4 tries", "4 tries, 1 lost". */
function madeText(tries: number, lost: number): string {
  const made = countText(tries, "try", "tries");
  return lost === 0 ? made : `${made}, ${lost} lost`;
}

/** Tries so far of a sitting under way. */
function triesSoFar({ body }: SittingRecord): string {
  const told = (typeof body === "object" && body !== null ? body : {}) as Told;
  const tries = told.progress?.tries;
  return Array.isArray(tries) ? madeText(tries.length, tries.filter(isLost).length) : "–";
}

/** Whether a sitting has a result that can be opened. */
export const hasResult = ({ state, body }: SittingRecord): boolean =>
  state !== "running" && typeof body === "object" && body !== null && "record" in body;

/** How a sitting stands by its checked record; null where that cannot be read, or does not check. */
export const shownStanding = (sitting: SittingRecord): SittingStanding | null => checkedStanding(sitting, APP_VERSION);

const named = (title: string) => (title.trim() === "" ? "Untitled sheet" : harmlessName(title));

const at = (time_ms: number) => ({ day: dayText(time_ms), clock: clockText(time_ms) });

/** What its record says of a sitting that has ended. */
function endedRow({ title, startedAt, outcome, tries, lostTries, check, differs }: SittingShown) {
  return {
    ...at(Date.parse(startedAt)),
    title: named(title),
    standing: outcome === null ? NOT_SOUND : STANDINGS[outcome],
    tries: madeText(tries, lostTries),
    sentences: checkSentences([...check.problems, ...differs, ...check.unheld, ...check.unchecked]),
    isWrong: check.problems.length + differs.length > 0,
  };
}

/** A sitting as a line of the list: what its checked record says, and never what is stored beside it. */
export function sittingRowOf(sitting: SittingRecord): SittingRow {
  const tags = (sitting.tags ?? []).join(", ");
  const checked = checkedSitting(sitting, { appVersion: APP_VERSION });
  if (checked.kind === "ended") return { tags, ...endedRow(checked.shown) };
  const beside = { tags, ...at(sitting.startedAt), title: named(sitting.title) };
  if (checked.kind === "running") {
    return { ...beside, standing: STANDINGS.running, tries: triesSoFar(sitting), sentences: [], isWrong: false };
  }
  const sentences = hasResult(sitting) ? [`The record cannot be read: ${checked.problem}.`] : [];
  return { ...beside, standing: NO_RECORD, tries: "–", sentences, isWrong: sentences.length > 0 };
}
