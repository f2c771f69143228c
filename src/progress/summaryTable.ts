import type { Hand } from "../realdial/sources/handOf";
import type { PersonRecord } from "../records/records";
import { type Skill, skillKey } from "../records/skill";
import type { ClassRow, ClassTable, StandingCell } from "./classTable";
import { inOrder, type SkillSummary, summaryCell } from "./skillSummary";

/** A summary, and whose it is. */
export interface OwnSummary {
  readonly personId: string;
  readonly summary: SkillSummary;
}

/** Every hand of a class, that of its figures first: as `handsOfClass` has it of all tries. */
export function handsOfSummaries(summaries: readonly OwnSummary[]): readonly [Hand, ...Hand[]] {
  const latestFirst = summaries.toSorted((a, b) => inOrder(b.summary.latest, a.summary.latest));
  const hands = [...new Set(latestFirst.flatMap(({ summary: { hand } }) => hand ?? []))];
  const [first = "screen", ...others] = hands.includes("screen")
    ? ["screen" as const, ...hands.filter((hand) => hand !== "screen")]
    : hands;
  return [first, ...others];
}

/** What a class table is made with. */
export interface SummarySetting {
  /** All that anyone practiced, if left out. */
  readonly skills?: readonly Skill[] | undefined;
  /** Milliseconds since 1970; left out, nothing lapses for want of practice. */
  readonly now?: number | undefined;
  readonly hand?: Hand | undefined;
}

/**
 * The class table of summaries: the same as `classTable` makes of all records that they sum up, by the usual rule.
 *
 * @param people - in whatever order; instructors are left out
 */
export function summaryTable(
  people: readonly PersonRecord[],
  summaries: readonly OwnSummary[],
  { skills, now, hand = handsOfSummaries(summaries)[0] }: SummarySetting = {},
): ClassTable<StandingCell> {
  const counted = summaries.filter(({ summary }) => summary.hand === null || summary.hand === hand);
  const found = new Map(counted.map(({ summary: { skill } }) => [skillKey(skill), skill]));
  const asked = skills ?? [...found.values()].sort((a, b) => skillKey(a).localeCompare(skillKey(b)));
  const own = new Map(counted.map(({ personId, summary }) => [`${personId} ${skillKey(summary.skill)}`, summary]));
  const row = (person: PersonRecord): ClassRow<StandingCell> => {
    const cells = asked.map((skill) => {
      const summary = own.get(`${person.id} ${skillKey(skill)}`);
      return summary === undefined ? null : summaryCell(summary, now);
    });
    return { person, cells, isReady: asked.length > 0 && cells.every((cell) => cell?.mastery.isReady === true) };
  };
  const trainees = people.filter(({ part }) => part === "trainee");
  const byName = trainees.toSorted((a, b) => a.name.localeCompare(b.name) || (a.id < b.id ? -1 : 1));
  return { skills: asked, rows: byName.map(row), hand };
}
