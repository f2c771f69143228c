import type { Hand } from "../realdial/sources/handOf";
import type { AttemptRecord } from "../records/attemptRecord";
import type { JobRecord } from "../records/jobRecord";
import { joinContents, type LogbookContents } from "../records/logbookContents";
import type { DeclarationRecord, PersonRecord } from "../records/records";
import { bySkill, type Skill, type SkillTry, skillKey } from "../records/skill";
import { declarationFor, type Mastery, type MasteryStanding, mastery } from "./mastery";
import { handsOfClass, jobsOfHand, ofHand } from "./oneHand";
import { least, type PersonalBest, personalBests, worstStop } from "./personalBest";
import { type Practice, practicesOf } from "./practice";
import type { ReadinessSetting } from "./readiness";
import { type FirstTimeOpenings, firstTimeOpenings } from "./stops/firstTimeOpenings";
import { nearStops } from "./stops/nearStops";
import { type StopErrors, stopErrors } from "./stops/stopTable";

/** One person at one skill, as it is by now. */
export interface StandingCell {
  /** Attempts, or jobs where the skill is one of jobs. */
  readonly attempts: number;
  readonly latest: Practice;
  /** Bests under each exact setting; none of jobs. */
  readonly bests: readonly PersonalBest[];
  /** Lock opened, or job right, the first time. */
  readonly openings: FirstTimeOpenings;
  readonly stops: StopErrors | null;
  readonly mastery: MasteryStanding;
}

/** One person at one skill, with how readiness came. */
export interface ClassCell extends StandingCell {
  readonly mastery: Mastery;
}

/** One person of a class. */
export interface ClassRow<Cell extends StandingCell = ClassCell> {
  readonly person: PersonRecord;
  /** In the order of the table's skills; null where the person has no attempt and no job. */
  readonly cells: readonly (Cell | null)[];
  /** Whether someone is ready at every skill of the table. */
  readonly isReady: boolean;
}

/** People and skills of a class. */
export interface ClassTable<Cell extends StandingCell = ClassCell> {
  readonly skills: readonly Skill[];
  readonly rows: readonly ClassRow<Cell>[];
  /** The hand that all its figures are of. */
  readonly hand: Hand;
}

interface CellParts {
  readonly skill: Skill;
  /** Oldest first. */
  readonly practices: readonly Practice[];
  /** Those among them that are attempts. */
  readonly attempts: readonly AttemptRecord[];
  readonly setting: ReadinessSetting;
}

function cellOf({ skill, practices, attempts, setting }: CellParts): ClassCell | null {
  const latest = practices.at(-1);
  const openings = firstTimeOpenings(practices);
  if (latest === undefined || openings === null) return null;
  return {
    attempts: practices.length,
    latest,
    bests: personalBests(attempts),
    openings,
    stops: stopErrors(nearStops(attempts)),
    mastery: mastery(skill, practices, setting),
  };
}

const groupsOf = <One extends SkillTry>(practices: readonly One[]) =>
  new Map(bySkill(practices).map(({ skill, attempts }) => [skillKey(skill), attempts]));

/** What one person has done. */
interface Own {
  readonly attempts: readonly AttemptRecord[];
  readonly jobs: readonly JobRecord[];
  readonly declarations: readonly DeclarationRecord[];
}

/** By what rule, when, and with which hand readiness is asked; the hand of `handsOfClass` where that is left out. */
export interface ClassSetting extends Pick<ReadinessSetting, "rule" | "now"> {
  readonly hand?: Hand | undefined;
}

function rowOf(
  person: PersonRecord,
  skills: readonly Skill[],
  { attempts, jobs, declarations }: Own,
  { hand, ...setting }: ClassSetting & { readonly hand: Hand },
): ClassRow {
  const own = attempts.toSorted((a, b) => a.startedAt - b.startedAt || (a.id < b.id ? -1 : 1));
  const practices = groupsOf(practicesOf(own, jobs));
  const dialed = groupsOf(own);
  const cells = skills.map((skill) => {
    const key = skillKey(skill);
    return cellOf({
      skill,
      practices: practices.get(key) ?? [],
      attempts: dialed.get(key) ?? [],
      setting: { ...setting, declaration: declarationFor(declarations, skill, setting.rule, hand) },
    });
  });
  return { person, cells, isReady: skills.length > 0 && cells.every((cell) => cell?.mastery.isReady === true) };
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
 * @param setting - the usual rule and hand, and no lapse for want of practice, if left out
 * @returns trainees by name; instructors are left out
 */
export function classTable(
  logbooks: readonly LogbookContents[],
  skills?: readonly Skill[],
  setting: ClassSetting = {},
): ClassTable {
  const all = joinContents(logbooks);
  const practices = practicesOf(all.records.attempts, all.records.jobs);
  const hand = setting.hand ?? handsOfClass(practices)[0];
  const found = bySkill(ofHand(practices, hand)).map(({ skill }) => skill);
  const asked = skills ?? found.sort((a, b) => skillKey(a).localeCompare(skillKey(b)));
  const trainees = all.records.people.filter(({ part }) => part === "trainee");
  const byName = trainees.sort((a, b) => a.name.localeCompare(b.name) || (a.id < b.id ? -1 : 1));
  const attempts = byPerson(ofHand(all.records.attempts, hand));
  const jobs = byPerson(jobsOfHand(all.records.jobs, hand));
  const declarations = byPerson(all.records.declarations);
  const row = (person: PersonRecord) =>
    rowOf(
      person,
      asked,
      {
        attempts: attempts.get(person.id) ?? [],
        jobs: jobs.get(person.id) ?? [],
        declarations: declarations.get(person.id) ?? [],
      },
      { ...setting, hand },
    );
  return { skills: asked, rows: byName.map(row), hand };
}

/** The same table with some of its skills alone: who is ready at all of these is ready. @param skills - of the table */
export function narrowedTable<Cell extends StandingCell>(
  table: ClassTable<Cell>,
  skills: readonly Skill[],
): ClassTable<Cell> {
  const keys = table.skills.map(skillKey);
  const places = skills.map((skill) => keys.indexOf(skillKey(skill)));
  const rows = table.rows.map(({ person, cells: all }): ClassRow<Cell> => {
    const cells = places.map((place) => all[place] ?? null);
    return { person, cells, isReady: cells.length > 0 && cells.every((cell) => cell?.mastery.isReady === true) };
  });
  return { ...table, skills, rows };
}

/** The quickest opening of a cell under any setting; null before the first with a time. */
export function quickestOf({ bests }: StandingCell): AttemptRecord | null {
  return least(
    bests.flatMap(({ quickest }) => quickest ?? []),
    ({ duration_ms }) => duration_ms,
  );
}

/** The opening of a cell, under any setting, whose worst stop was best; null before the first. */
export function truestOf({ bests }: StandingCell): AttemptRecord | null {
  return least(
    bests.flatMap(({ truest }) => truest ?? []),
    worstStop,
  );
}
