import { harmlessName } from "../../lock/harmlessText";
import { type ClassSetting, type ClassTable, classTable } from "../../progress/classTable";
import { handsOfClass } from "../../progress/oneHand";
import { practicesOf } from "../../progress/practice";
import type { Hand } from "../../realdial/sources/handOf";
import type { AttemptRecord } from "../../records/attemptRecord";
import { joinContents, type LogbookContents } from "../../records/logbookContents";
import { PERSONAL_KINDS, type PersonRecord } from "../../records/records";
import { bySkill, type Skill, type SkillTry, skillKey } from "../../records/skill";
import { countText } from "../../wording/amountWords";
import { knownProfile } from "../results/attemptRows";
import { skillTitle } from "../results/skillTitle";

/** A skill with what it is called. */
export interface NamedSkill {
  readonly skill: Skill;
  readonly key: string;
  readonly title: string;
}

/** A logbook that is laid on a desk. */
export interface DeskLogbook {
  /** Of its file. */
  readonly name: string;
  readonly contents: LogbookContents;
}

/** A class, from all logbooks on the desk. */
export interface ClassView {
  readonly contents: LogbookContents;
  /** Every skill that anyone practiced, in the order of the table. */
  readonly skills: readonly NamedSkill[];
  /** What each person is called, by id: the name, and more where two have one name. */
  readonly names: ReadonlyMap<string, string>;
  /** Every hand that anyone tried, that of the figures first. */
  readonly hands: readonly [Hand, ...Hand[]];
  /** Records that came in more than one file. */
  readonly repeated: number;
}

const countRecords = ({ records }: LogbookContents) =>
  records.people.length + PERSONAL_KINDS.reduce((sum, kind) => sum + records[kind].length, 0);

const withoutEnding = (name: string) => name.replace(/\.[^.]+$/, "");

/**
 * What each person is called: people of one name are told apart by the file they came in, and else by a number.
 *
 * @param people - each once
 */
export function namesOf(people: readonly PersonRecord[], files: readonly DeskLogbook[]): Map<string, string> {
  const names = new Map<string, string>();
  const taken = new Set<string>();
  const shown = people.map(({ id, name }) => ({ id, name: harmlessName(name) }));
  const count = (name: string) => shown.filter((one) => one.name === name).length;
  for (const { id, name } of shown) {
    const file = files.find(({ contents }) => contents.records.people.some((one) => one.id === id));
    const full = count(name) > 1 && file !== undefined ? `${name} (${harmlessName(withoutEnding(file.name))})` : name;
    let free = full;
    for (let i = 2; taken.has(free); i++) free = `${full} ${i}`;
    taken.add(free);
    names.set(id, free);
  }
  return names;
}

/** A try at a skill, with the whole profile where it is none of the shipped ones. */
type TryOfLock = SkillTry & Pick<AttemptRecord, "ownProfile">;

/** The skills of some tries with what they are called, in the order of a table. */
export function namedSkills(tries: readonly TryOfLock[]): NamedSkill[] {
  const locks = new Map(tries.map((one) => [one.profileId, one]));
  const named = bySkill(tries).map(({ skill }) => {
    const first = locks.get(skill.profileId);
    return {
      skill,
      key: skillKey(skill),
      title: skillTitle(first === undefined ? null : knownProfile(first), skill),
    };
  });
  return named.sort((a, b) => a.key.localeCompare(b.key));
}

/** Joins what lies on the desk. */
export function classView(files: readonly DeskLogbook[]): ClassView {
  const contents = joinContents(files.map((file) => file.contents));
  const all = files.reduce((sum, file) => sum + countRecords(file.contents), 0);
  return {
    contents,
    skills: namedSkills([
      ...contents.records.attempts,
      ...contents.records.jobs.map((job) => ({ ...job, exercise: job.kind })),
    ]),
    hands: handsOfClass(practicesOf(contents.records.attempts, contents.records.jobs)),
    names: namesOf(contents.records.people, files),
    repeated: all - countRecords(contents),
  };
}

/** The table of a class over the skills asked for. */
export const tableOf = ({ contents }: ClassView, skills: readonly NamedSkill[], setting: ClassSetting): ClassTable =>
  classTable(
    [contents],
    skills.map(({ skill }) => skill),
    setting,
  );

/** "40 attempts", "40 attempts, 7 jobs". */
function workText({ attempts, jobs }: LogbookContents["records"]): string {
  const dialed = countText(attempts.length, "attempt");
  return jobs.length === 0 ? dialed : `${dialed}, ${countText(jobs.length, "job")}`;
}

/** What lies on the desk, in a sentence or three. */
export function deskSentence({ contents: { records }, repeated }: ClassView, files: number): string {
  const trainees = records.people.filter(({ part }) => part === "trainee").length;
  const others = records.people.length - trainees;
  const parts = [
    `${countText(files, "logbook")}: ${countText(trainees, "trainee")}, ${workText(records)}, ${countText(records.sittings.length, "sitting")}.`,
    ...(others === 0 ? [] : [`${countText(others, "instructor is", "instructors are")} not in the table.`]),
    ...(repeated === 0
      ? []
      : [
          `${countText(repeated, "record", "records")} came in more than one file. Each counts once; the newer one counts.`,
        ]),
  ];
  return parts.join(" ");
}

const MOST_NAMES = 3;

/** Whose logbook a file is, for a list: "Mibsy and 40 attempts", "Dorvik, Jorrel, Mibsy and 4 more". */
export function fileSentence({ contents: { records } }: Pick<DeskLogbook, "contents">): string {
  const names = records.people.map(({ name }) => harmlessName(name));
  const more = names.length - MOST_NAMES;
  const shown = names.slice(0, MOST_NAMES).join(", ");
  const who = names.length === 0 ? "no one" : `${shown}${more > 0 ? ` and ${more} more` : ""}`;
  return `${who}; ${countText(records.people.length, "person", "people")}, ${workText(records)}`;
}
