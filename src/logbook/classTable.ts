import type { AttemptRecord } from "./attemptRecord";
import { type CsvCell, csvText } from "./csvText";
import { type FirstTimeOpenings, firstTimeOpenings } from "./firstTimeOpenings";
import { joinContents, type LogbookContents } from "./logbookContents";
import { type Mastery, mastery } from "./mastery";
import { type PersonalBest, personalBests } from "./personalBest";
import { type Practice, practicesOf } from "./practice";
import type { PersonRecord } from "./records";
import { bySkill, type Skill, skillKey } from "./skill";
import { type StopErrors, stopTable } from "./stopTable";

/** One person at one skill. */
export interface ClassCell {
  /** Attempts, or jobs where the skill is one of jobs. */
  readonly attempts: number;
  readonly latest: Practice;
  /** Bests under each exact setting; none of jobs. */
  readonly bests: readonly PersonalBest[];
  /** Lock opened, or job right, the first time. */
  readonly openings: FirstTimeOpenings;
  readonly stops: StopErrors | null;
  readonly mastery: Mastery;
}

/** One person of a class. */
export interface ClassRow {
  readonly person: PersonRecord;
  /** In the order of the table's skills; null where the person has no attempt and no job. */
  readonly cells: readonly (ClassCell | null)[];
  /** Whether every skill of the table has been shown. */
  readonly isReady: boolean;
}

/** People and skills of a class. */
export interface ClassTable {
  readonly skills: readonly Skill[];
  readonly rows: readonly ClassRow[];
}

interface CellParts {
  readonly skill: Skill;
  /** Oldest first. */
  readonly practices: readonly Practice[];
  /** Those among them that are attempts. */
  readonly attempts: readonly AttemptRecord[];
  readonly declared: number | undefined;
}

function cellOf({ skill, practices, attempts, declared }: CellParts): ClassCell | null {
  const latest = practices.at(-1);
  const openings = firstTimeOpenings(practices);
  if (latest === undefined || openings === null) return null;
  return {
    attempts: practices.length,
    latest,
    bests: personalBests(attempts),
    openings,
    stops: stopTable(attempts).all,
    mastery: mastery(skill, practices, declared === undefined ? undefined : { attempts: declared }),
  };
}

const groupsOf = <One extends Skill>(practices: readonly One[]) =>
  new Map(bySkill(practices).map(({ skill, attempts }) => [skillKey(skill), attempts]));

function rowOf(person: PersonRecord, skills: readonly Skill[], { records }: LogbookContents): ClassRow {
  const own = records.attempts
    .filter(({ personId }) => personId === person.id)
    .sort((a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1));
  const jobs = records.jobs.filter(({ personId }) => personId === person.id);
  const practices = groupsOf(practicesOf(own, jobs));
  const attempts = groupsOf(own);
  const declared = new Map(
    records.declarations.filter(({ personId }) => personId === person.id).map((one) => [skillKey(one), one.attempts]),
  );
  const cells = skills.map((skill) => {
    const key = skillKey(skill);
    return cellOf({
      skill,
      practices: practices.get(key) ?? [],
      attempts: attempts.get(key) ?? [],
      declared: declared.get(key),
    });
  });
  return { person, cells, isReady: skills.length > 0 && cells.every((cell) => cell?.mastery.isDeclared === true) };
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
  const found = bySkill(practicesOf(all.records.attempts, all.records.jobs)).map(({ skill }) => skill);
  const asked = skills ?? found.sort((a, b) => skillKey(a).localeCompare(skillKey(b)));
  const trainees = all.records.people.filter(({ part }) => part === "trainee");
  const byName = trainees.sort((a, b) => a.name.localeCompare(b.name) || (a.id < b.id ? -1 : 1));
  return { skills: asked, rows: byName.map((person) => rowOf(person, asked, all)) };
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
  "latest",
  "latest_opened",
  "shown",
  "ready_in_all",
];

const fixed = (value: number | null | undefined) => (value == null ? null : Number(value.toFixed(3)));

function csvRow({ person, isReady }: ClassRow, { profileId, exercise }: Skill, cell: ClassCell): CsvCell[] {
  const quickest = cell.bests.flatMap((best) => (best.quickest ? [best.quickest.duration_ms / 1000] : []));
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
    quickest.length === 0 ? null : fixed(Math.min(...quickest)),
    new Date(cell.latest.startedAt).toISOString(),
    cell.latest.opened ? 1 : 0,
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
