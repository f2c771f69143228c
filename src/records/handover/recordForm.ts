import type { Combination } from "../../lock/combination";
import { combinationInClear } from "./combinationInClear";
import { isCalendarDate } from "./nextChange";

/** What a person writes into the record. Never the combination. */
export interface RecordForm {
  readonly technician: string;
  readonly second: string;
  /** Who takes the door over. */
  readonly takenOverBy: string;
  /** Who authorized a height out of range; empty where the height needs nobody. */
  readonly authorizedBy: string;
  readonly lock: string;
  readonly door: string;
  /** Calendar date, YYYY-MM-DD. */
  readonly date: string;
  /** Who holds the combination and was told so, in free words. */
  readonly holders: string;
  readonly remarks: string;
}

/** The fields of the form in their order, as they are labeled. */
export const RECORD_FIELDS = {
  technician: "Technician",
  second: "Second person",
  takenOverBy: "Taken over by",
  authorizedBy: "Exception confirmed by",
  lock: "Lock",
  door: "Door",
  date: "Date",
  holders: "Holders informed",
  remarks: "Remarks",
} as const satisfies Readonly<Record<keyof RecordForm, string>>;

/** Name of a field of the form. */
export type RecordField = keyof RecordForm;

const FIELDS = Object.keys(RECORD_FIELDS) as RecordField[];
const OPTIONAL: readonly RecordField[] = ["remarks"];
/** The date has a form of its own, which holds no combination. */
const FREE = FIELDS.filter((field) => field !== "date");

/** Something that keeps a record from being written. */
export interface RecordProblem {
  readonly code: "empty" | "no-date" | "combination";
  /** The field to mend; null where the combination is spread over several. */
  readonly field: RecordField | null;
  /** A sentence. */
  readonly words: string;
}

/** A combination that may not be in the record. */
export interface KeptSecret {
  /** As on the face of the dial. */
  readonly combination: Combination;
  readonly graduations: number;
}

const REASON = "People who may not have the combination read the record: write who holds it, never what it is.";
const MEND =
  "Take out one of its numbers, even if it means something else there. Dates with a four-digit year and telephone numbers that begin with + may stay.";

const clearProblem = (form: RecordForm, secrets: readonly KeptSecret[]): RecordProblem | undefined => {
  const texts = FREE.map((field) => form[field]);
  const findings = secrets.map(({ combination, graduations }) => combinationInClear(texts, combination, graduations));
  const finding = findings.find((one) => one !== undefined);
  if (finding === undefined) return undefined;
  const field = finding.field === null ? null : (FREE[finding.field] ?? null);
  const where = field === null ? "spread over several fields" : `near each other in "${RECORD_FIELDS[field]}"`;
  return { code: "combination", field, words: `All numbers of the combination are ${where}. ${REASON} ${MEND}` };
};

/**
 * What keeps a record from being written, the combination first; none where it can be.
 *
 * @param secrets - combinations that the lock has, or had when it came
 * @param isHeightAuthorized - whether somebody authorized a height out of range, and so has to be named
 */
export function recordProblems(
  form: RecordForm,
  secrets: readonly KeptSecret[],
  isHeightAuthorized: boolean,
): RecordProblem[] {
  const clear = clearProblem(form, secrets);
  const isWanted = (field: RecordField) =>
    field === "authorizedBy" ? isHeightAuthorized : field !== "date" && !OPTIONAL.includes(field);
  const empty = FIELDS.filter((field) => isWanted(field) && form[field].trim() === "");
  return [
    ...(clear === undefined ? [] : [clear]),
    ...empty.map((field) => ({
      code: "empty" as const,
      field,
      words: `"${RECORD_FIELDS[field]}" is empty: fill it in.`,
    })),
    ...(isCalendarDate(form.date)
      ? []
      : [{ code: "no-date" as const, field: "date" as const, words: '"Date" is not a date: write it as 2026-11-26.' }]),
  ];
}
