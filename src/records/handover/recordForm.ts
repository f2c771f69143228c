import type { Combination } from "../../lock/combination";
import type { Problem } from "../../wording/problem";
import { combinationInClear } from "./combinationInClear";
import { formProblem } from "./formWords";
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

/** A combination that may not be in the record. */
export interface KeptSecret {
  /** As on the face of the dial. */
  readonly combination: Combination;
  readonly graduations: number;
}

/** The combination in the record, and the field it is in, where it is not spread over several. */
const clearProblem = (form: RecordForm, secrets: readonly KeptSecret[]): Problem | undefined => {
  const texts = FREE.map((field) => form[field]);
  const findings = secrets.map(({ combination, graduations }) => combinationInClear(texts, combination, graduations));
  const finding = findings.find((one) => one !== undefined);
  if (finding === undefined) return undefined;
  const field = finding.field === null ? undefined : FREE[finding.field];
  return field === undefined
    ? formProblem("combination-spread", [])
    : formProblem("combination", [field], { label: RECORD_FIELDS[field] });
};

/**
 * What keeps a record from being written, the combination first; none where it can be. Its path is the field to fix.
 *
 * @param secrets - combinations that the lock has, or had when it came
 * @param isHeightAuthorized - whether somebody authorized a height out of range, and so has to be named
 */
export function recordProblems(
  form: RecordForm,
  secrets: readonly KeptSecret[],
  isHeightAuthorized: boolean,
): Problem[] {
  const clear = clearProblem(form, secrets);
  const isWanted = (field: RecordField) =>
    field === "authorizedBy" ? isHeightAuthorized : field !== "date" && !OPTIONAL.includes(field);
  const empty = FIELDS.filter((field) => isWanted(field) && form[field].trim() === "");
  return [
    ...(clear === undefined ? [] : [clear]),
    ...empty.map((field) => formProblem("empty", [field], { label: RECORD_FIELDS[field] })),
    ...(isCalendarDate(form.date) ? [] : [formProblem("no-date", ["date"], { label: RECORD_FIELDS.date })]),
  ];
}
