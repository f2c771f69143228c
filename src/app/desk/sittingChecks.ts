import { matchingSheet, type SheetMatch } from "../../drill/sheet/knownSheet";
import type { Sheet } from "../../drill/sheet/sheet";
import { harmlessName } from "../../lock/harmlessText";
import type { SittingRecord } from "../../records/records";
import { type CheckedSitting, checkedSitting, type PackedMotions } from "../../records/sitting/checkedSitting";
import { checkSentences } from "../../records/sitting/checkWords";
import { OUTCOME_WORDS, soundnessWords } from "../../records/sitting/shownWords";
import type { Outcome } from "../../records/sitting/sittingShown";

/** What the desk says of a sitting. All of it comes from the checked record, and nothing from what stands beside. */
export interface DeskSitting {
  readonly title: string;
  /** As the record has it; null where there is no record to tell. */
  readonly startedAt: string | null;
  /** Null while it goes on, and where its record cannot be read or does not check: then it has no result. */
  readonly outcome: Outcome | null;
  readonly result: string;
  /** Short form and whole of the sheet's fingerprint; null where there is no record to tell. */
  readonly fingerprint: string | null;
  readonly sheetSha256: string | null;
  /** Fingerprint of the sheet, and whether it is one of the instructor's. */
  readonly sheet: string;
  readonly pauses: string;
  readonly reloads: string;
  /** What checking the record came to, in a few words. */
  readonly record: string;
  /** What is wrong, what differs, and what was not checked, in sentences. */
  readonly sentences: readonly string[];
}

/** What the records of a desk are checked with. */
export interface DeskChecks {
  /** The version that checks. */
  readonly appVersion: string;
  /** Motions of the tries, by attempt. */
  readonly traces: PackedMotions;
  /** Names of the people on the desk, by id. */
  readonly names: ReadonlyMap<string, string>;
  /** The instructor's own sheets, and those of this trainer. */
  readonly sheets: readonly Sheet[];
}

/** Where a sheet is from, in words. */
export function matchWords(match: SheetMatch): string {
  if (match.kind === "same") return `your sheet ${harmlessName(match.title)}`;
  return match.kind === "differs" ? `differs from your sheet ${harmlessName(match.title)}` : "not one of your sheets";
}

const NO_SHEET = { fingerprint: null, sheetSha256: null, sheet: "–" } as const;
const NOTHING = { startedAt: null, outcome: null, pauses: "–", reloads: "–", sentences: [], ...NO_SHEET } as const;

function deskSitting(checked: CheckedSitting, sheets: readonly Sheet[]): DeskSitting {
  if (checked.kind === "running") {
    return { ...NOTHING, title: "A sitting under way", result: "–", record: "not ended" };
  }
  if (checked.kind === "unreadable") {
    const sentences = [`The record cannot be read: ${checked.problem}.`];
    return { ...NOTHING, title: "No sheet can be read", result: "none", record: "cannot be read", sentences };
  }
  const { shown } = checked;
  const { check, differs, outcome } = shown;
  const practice = shown.isPractice ? " (practice: its seed was given)" : "";
  return {
    title: harmlessName(shown.title),
    startedAt: shown.startedAt,
    outcome,
    result: outcome === null ? "none" : `${OUTCOME_WORDS[outcome]}${practice}`,
    fingerprint: shown.fingerprint,
    sheetSha256: shown.sheetSha256,
    sheet: `${shown.fingerprint}, ${matchWords(matchingSheet(shown, sheets))}`,
    pauses: String(shown.pauses),
    reloads: String(shown.reloads),
    record: soundnessWords(shown),
    sentences: checkSentences([...check.problems, ...differs, ...check.unheld, ...check.unchecked]),
  };
}

/** Gives the page a turn between two records. */
const breath = () => new Promise((resolve) => setTimeout(resolve));

/**
 * Checks the records of sittings, one after another.
 *
 * @returns what to say of each, by id
 */
export async function sittingChecks(
  sittings: readonly SittingRecord[],
  { appVersion, traces, names, sheets }: DeskChecks,
): Promise<ReadonlyMap<string, DeskSitting>> {
  const checks = new Map<string, DeskSitting>();
  for (const one of sittings) {
    const person = names.get(one.personId);
    checks.set(one.id, deskSitting(checkedSitting(one, { appVersion, person, traces }), sheets));
    await breath();
  }
  return checks;
}
