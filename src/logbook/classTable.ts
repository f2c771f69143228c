import type { AttemptRecord } from "./attemptRecord";
import { type CsvCell, csvText } from "./csvText";
import { type FirstTimeOpenings, firstTimeOpenings } from "./firstTimeOpenings";
import { joinContents, type LogbookContents } from "./logbookContents";
import { type Mastery, mastery } from "./mastery";
import { nearStops } from "./nearStops";
import { least, type PersonalBest, personalBests, worstStop } from "./personalBest";
import type { DeclarationRecord, PersonRecord } from "./records";
import { bySkill, type Skill, skillKey } from "./skill";
import { type StopErrors, stopErrors } from "./stopTable";

/** One person at one skill. */
export interface ClassCell {
  readonly attempts: number;
  readonly latest: AttemptRecord;
  /** Bests under each exact setting. */
  readonly bests: readonly PersonalBest[];
  readonly openings: FirstTimeOpenings;
  readonly stops: StopErrors | null;
  readonly mastery: Mastery;
}

/** One person of a class. */
export interface ClassRow {
  readonly person: PersonRecord;
  /** In the order of the table's skills; null where the person has no attempt. */
  readonly cells: readonly (ClassCell | null)[];
  /** Whether every skill of the table has been shown. */
  readonly isReady: boolean;
}

/** People and skills of a class. */
export interface ClassTable {
  readonly skills: readonly Skill[];
  readonly rows: readonly ClassRow[];
}

function cellOf(skill: Skill, attempts: readonly AttemptRecord[], declared: number | undefined): ClassCell | null {
  const latest = attempts.at(-1);
  const openings = firstTimeOpenings(attempts);
  if (latest === undefined || openings === null) return null;
  return {
    attempts: attempts.length,
    latest,
    bests: personalBests(attempts),
    openings,
    stops: stopErrors(nearStops(attempts)),
    mastery: mastery(skill, attempts, declared === undefined ? undefined : { attempts: declared }),
  };
}

function rowOf(
  person: PersonRecord,
  skills: readonly Skill[],
  attempts: readonly AttemptRecord[],
  declarations: readonly DeclarationRecord[],
): ClassRow {
  const own = attempts.toSorted((a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1));
  const groups = new Map(bySkill(own).map(({ skill, attempts: some }) => [skillKey(skill), some]));
  const declared = new Map(declarations.map((one) => [skillKey(one), one.attempts]));
  const cells = skills.map((skill) => cellOf(skill, groups.get(skillKey(skill)) ?? [], declared.get(skillKey(skill))));
  return { person, cells, isReady: skills.length > 0 && cells.every((cell) => cell?.mastery.isDeclared === true) };
}

function byPerson<One extends { readonly personId: string }>(records: readonly One[]): Map<string, One[]> {
  const groups = new Map<string, One[]>();
  for (const record of records) {
    const own = groups.get(record.personId);
    if (own === undefined) groups.set(record.personId, [record]);
    else own.push(record);
  }
  return groups;
}

/**
 * A class from the logbooks of many machines: each person once, whatever order the files come in.
 *
 * @param logbooks - as read from files
 * @param skills - asked for; all that anyone practiced, if left out
 * @returns trainees by name; instructors are left out
 */
export function classTable(logbooks: readonly LogbookContents[], skills?: readonly Skill[]): ClassTable {
  const all = joinContents(logbooks);
  const found = bySkill(all.records.attempts).map(({ skill }) => skill);
  const asked = skills ?? found.sort((a, b) => skillKey(a).localeCompare(skillKey(b)));
  const trainees = all.records.people.filter(({ part }) => part === "trainee");
  const byName = trainees.sort((a, b) => a.name.localeCompare(b.name) || (a.id < b.id ? -1 : 1));
  const attempts = byPerson(all.records.attempts);
  const declarations = byPerson(all.records.declarations);
  const row = (person: PersonRecord) =>
    rowOf(person, asked, attempts.get(person.id) ?? [], declarations.get(person.id) ?? []);
  return { skills: asked, rows: byName.map(row) };
}

/** The quickest opening of a cell under any setting; null before the first with a time. */
export function quickestOf({ bests }: ClassCell): AttemptRecord | null {
  return least(
    bests.flatMap(({ quickest }) => quickest ?? []),
    ({ duration_ms }) => duration_ms,
  );
}

/** The opening of a cell, under any setting, whose worst stop was best; null before the first. */
export function truestOf({ bests }: ClassCell): AttemptRecord | null {
  return least(
    bests.flatMap(({ truest }) => truest ?? []),
    worstStop,
  );
}

const HEADER = [
  "person",
  "person_id",
  "profile",
  "exercise",
  "attempts",
  "opened",
  "wilson_low",
  "wilson_high",
  "stop_bias",
  "stop_spread",
  "quickest_s",
  "truest_worst_stop",
  "latest",
  "latest_opened",
  "latest_s",
  "shown",
  "ready_in_all",
];

const fixed = (value: number | null | undefined) => (value == null ? null : Number(value.toFixed(3)));

function csvRow({ person, isReady }: ClassRow, { profileId, exercise }: Skill, cell: ClassCell): CsvCell[] {
  const quickest = quickestOf(cell);
  const truest = truestOf(cell);
  return [
    person.name,
    person.id,
    profileId,
    exercise,
    cell.attempts,
    cell.openings.opened,
    fixed(cell.openings.interval.low),
    fixed(cell.openings.interval.high),
    fixed(cell.stops?.bias),
    fixed(cell.stops?.spread),
    fixed(quickest && quickest.duration_ms / 1000),
    fixed(truest && worstStop(truest)),
    new Date(cell.latest.startedAt).toISOString(),
    cell.latest.opened ? 1 : 0,
    fixed(cell.latest.duration_ms / 1000),
    cell.mastery.isDeclared ? 1 : 0,
    isReady ? 1 : 0,
  ];
}

/** A class table as CSV, one person and skill a row; times in seconds, stops in graduations. */
export function classCsv({ skills, rows }: ClassTable): string {
  const lines = rows.flatMap((row) =>
    skills.flatMap((skill, i) => {
      const cell = row.cells[i];
      return cell ? [csvRow(row, skill, cell)] : [];
    }),
  );
  return csvText(HEADER, lines);
}
