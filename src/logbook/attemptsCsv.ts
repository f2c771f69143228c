import type { AttemptRecord } from "./attemptRecord";
import { type CsvCell, csvText } from "./csvText";
import type { LogbookContents } from "./logbookContents";

const STOPS = [1, 2, 3, 4, 5, 6];

const HEADER = [
  "id",
  "started",
  "person",
  "profile",
  "exercise",
  "combination",
  "help",
  "conditions",
  "tags",
  "opened",
  "unfinished",
  "duration_s",
  "faults",
  ...STOPS.map((step) => `stop_error_${step}`),
  "estimate",
  "note",
];

const fixed = (value: number, decimals: number) => Number(value.toFixed(decimals));

function row(attempt: AttemptRecord, name: string): CsvCell[] {
  const error = (step: number) => attempt.stops.find((stop) => stop.step === step)?.error;
  return [
    attempt.id,
    new Date(attempt.startedAt).toISOString(),
    name,
    attempt.profileId,
    attempt.exercise,
    attempt.combination.join("-"),
    attempt.help,
    attempt.conditions.join("; "),
    attempt.tags.join("; "),
    attempt.opened ? 1 : 0,
    attempt.isUnfinished === true ? 1 : 0,
    fixed(attempt.duration_ms / 1000, 3),
    attempt.faults.map(({ code, number, size }) => `${code} ${number} (${fixed(size, 2)})`).join("; "),
    ...STOPS.map((step) => {
      const value = error(step);
      return value === undefined ? null : fixed(value, 3);
    }),
    attempt.estimate === undefined ? null : fixed(attempt.estimate, 3),
    attempt.note ?? "",
  ];
}

/** Attempts as CSV, one a row, in the order they are kept; stop errors in graduations, positive ran past. */
export function attemptsCsv({ records }: LogbookContents): string {
  const names = new Map(records.people.map(({ id, name }) => [id, name]));
  return csvText(
    HEADER,
    records.attempts.map((attempt) => row(attempt, names.get(attempt.personId) ?? "")),
  );
}
