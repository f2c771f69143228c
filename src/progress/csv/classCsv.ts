import type { Hand } from "../../realdial/sources/handOf";
import { type CsvColumn, csvOf, fixed, timeCell } from "../../records/csv/csvText";
import { yesNo } from "../../records/csv/recordColumns";
import type { Skill } from "../../records/skill";
import { triedRight } from "../../records/triedRight";
import { type ClassRow, type ClassTable, quickestOf, type StandingCell, truestOf } from "../classTable";
import { worstStop } from "../personalBest";

interface Row {
  readonly row: ClassRow<StandingCell>;
  readonly skill: Skill;
  readonly cell: StandingCell;
  readonly hand: Hand;
}

const seconds = (attempt: { readonly duration_ms: number } | null) => attempt && fixed(attempt.duration_ms / 1000);

const truest = (cell: StandingCell) => {
  const found = truestOf(cell);
  return found && fixed(worstStop(found));
};

/** Columns of the file of a class. */
export const CLASS_COLUMNS: readonly CsvColumn<Row>[] = [
  { name: "person", meaning: "name of the person", cell: ({ row }) => row.person.name },
  { name: "person_id", meaning: "id of the person, the same after a change of name", cell: ({ row }) => row.person.id },
  { name: "profile", meaning: "id of the kind of lock", cell: ({ skill }) => skill.profileId },
  { name: "exercise", meaning: "open, or the kind of job", cell: ({ skill }) => skill.exercise },
  { name: "attempts", meaning: "attempts, or jobs, that came to their end", cell: ({ cell }) => cell.attempts },
  { name: "opened", meaning: "how many opened, or were right", cell: ({ cell }) => cell.openings.opened },
  {
    name: "wilson_low",
    unit: "0 to 1",
    meaning: "the true rate is at least this (Wilson, 95 %)",
    cell: ({ cell }) => fixed(cell.openings.interval.low),
  },
  {
    name: "wilson_high",
    unit: "0 to 1",
    meaning: "the true rate is at most this (Wilson, 95 %)",
    cell: ({ cell }) => fixed(cell.openings.interval.high),
  },
  {
    name: "stop_bias",
    unit: "graduations",
    meaning: "mean stop error; plus ran past",
    cell: ({ cell }) => fixed(cell.stops?.bias),
  },
  {
    name: "stop_spread",
    unit: "graduations",
    meaning: "standard deviation of the stop errors",
    cell: ({ cell }) => fixed(cell.stops?.spread),
  },
  { name: "quickest_s", unit: "s", meaning: "fastest opening", cell: ({ cell }) => seconds(quickestOf(cell)) },
  {
    name: "truest_worst_stop",
    unit: "graduations",
    meaning: "worst stop of the opening where it was smallest",
    cell: ({ cell }) => truest(cell),
  },
  {
    name: "latest",
    unit: "UTC, ISO 8601",
    meaning: "when the latest attempt, or job, was begun",
    cell: ({ cell }) => timeCell(cell.latest.startedAt),
  },
  yesNo("latest_opened", "whether the latest opened, or was right", ({ cell }) => triedRight(cell.latest)),
  { name: "latest_s", unit: "s", meaning: "time of the latest", cell: ({ cell }) => seconds(cell.latest) },
  yesNo("ready", "whether the person is ready at it now, by the rule of the desk", ({ cell }) => cell.mastery.isReady),
  yesNo("lapsed", "whether the person was ready and is no longer", ({ cell }) => cell.mastery.state === "lapsed"),
  yesNo("ready_in_all", "whether the person is ready at every skill of the table", ({ row }) => row.isReady),
  { name: "turned_by", meaning: "what turned the dial: no figure mixes two hands", cell: ({ hand }) => hand },
];

/** A class table as CSV, one person and skill a row. */
export function classCsv({ skills, rows, hand }: ClassTable<StandingCell>): string {
  const lines = rows.flatMap((row) =>
    skills.flatMap((skill, i) => {
      const cell = row.cells[i];
      return cell ? [{ row, skill, cell, hand }] : [];
    }),
  );
  return csvOf(CLASS_COLUMNS, lines);
}
