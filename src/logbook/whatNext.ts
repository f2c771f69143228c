import type { AttemptRecord, HelpLevel } from "./attemptRecord";
import { type Mastery, mastery } from "./mastery";
import { missesToRedo } from "./missesToRedo";
import { fadedHelp, ORDER_REASONS, type PracticeOrder, practiceOrder } from "./practiceOrder";
import type { DeclarationRecord } from "./records";
import { type Refresh, refresh } from "./refresh";
import { bySkill, type Skill, skillKey } from "./skill";

/** One thing that could be practiced next, with the reason. An offer: nothing is ever locked. */
export interface Suggestion {
  readonly kind: "redo-misses" | "go-on" | "refresh";
  readonly skill: Skill;
  readonly reason: string;
  readonly help: HelpLevel;
  /** The misses to redo, latest first; empty for the other kinds. */
  readonly misses: readonly AttemptRecord[];
}

/** What to practice next. */
export interface WhatNext {
  readonly suggestions: readonly Suggestion[];
  readonly order: PracticeOrder;
  readonly orderReason: string;
}

interface SkillState {
  readonly skill: Skill;
  readonly mastery: Mastery;
  readonly refresh: Refresh | null;
  readonly misses: readonly AttemptRecord[];
}

function suggestionsFor({ skill, mastery: state, refresh: due, misses }: SkillState): Suggestion[] {
  const common = { skill, help: fadedHelp(state.progress), misses: [] };
  const count = misses.length;
  const redo: Suggestion = {
    ...common,
    kind: "redo-misses",
    reason: `${count} ${count === 1 ? "miss has" : "misses have"} not been made good yet: redo only ${count === 1 ? "that one" : "those"}.`,
    misses,
  };
  const isDue = state.isDeclared && due?.isDue === true;
  return [
    ...(count > 0 ? [redo] : []),
    ...(state.isDeclared ? [] : [{ ...common, kind: "go-on" as const, reason: state.message }]),
    ...(isDue ? [{ ...common, kind: "refresh" as const, reason: due.reason }] : []),
  ];
}

const RANK: Readonly<Record<Suggestion["kind"], number>> = { "redo-misses": 0, "go-on": 1, refresh: 2 };

/**
 * What one person may practice next: misses first, then what is not shown yet, then what is due for refresh.
 *
 * @param attempts - of one person, oldest first
 * @param declarations - of that person
 * @param now - milliseconds since 1970
 * @param dayStart - minutes that the local day begins after that of UTC, as `getTimezoneOffset` of a date gives them
 */
export function whatNext(
  attempts: readonly AttemptRecord[],
  declarations: readonly DeclarationRecord[],
  now: number,
  dayStart = 0,
): WhatNext {
  const declared = new Map(declarations.map((one) => [skillKey(one), one]));
  const states = bySkill(attempts).map(
    ({ skill, attempts: own }): SkillState => ({
      skill,
      mastery: mastery(skill, own, declared.get(skillKey(skill))),
      refresh: refresh(own, now, dayStart),
      misses: missesToRedo(own),
    }),
  );
  const least = states.reduce((low, { mastery: { progress } }) => Math.min(low, progress), states.length === 0 ? 0 : 1);
  const order = practiceOrder(least);
  const suggestions = states.flatMap(suggestionsFor).sort((a, b) => RANK[a.kind] - RANK[b.kind]);
  return { suggestions, order, orderReason: ORDER_REASONS[order] };
}
