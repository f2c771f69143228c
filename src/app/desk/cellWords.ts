import { type ClassCell, quickestOf, truestOf } from "../../logbook/classTable";
import { isJobSkill } from "../../logbook/jobRecord";
import { type Mastery, openingsWanted } from "../../logbook/mastery";
import { worstStop } from "../../logbook/personalBest";
import { dayText } from "../logbook/attemptRows";
import { minutesText } from "../logbook/jobRows";

/** How far someone is with a skill. */
export type CellState = "ready" | "not-yet" | "none";

/** The state of a cell; a person without an attempt has none. */
export function cellState(cell: ClassCell | null | undefined): CellState {
  if (!cell) return "none";
  return cell.mastery.isDeclared ? "ready" : "not-yet";
}

/** A state in words. @param isJob - whether the skill is one of jobs */
export function stateWord(state: CellState, isJob: boolean): string {
  if (state === "none") return isJob ? "No job" : "No attempt";
  return state === "ready" ? "Ready" : "Not yet";
}

/** One cell in words and figures. */
export interface CellWords {
  readonly openings: string;
  readonly latest: string;
  /** Null for jobs, which are not raced. */
  readonly best: string | null;
}

const seconds = (time_ms: number) => `${(time_ms / 1000).toFixed(1)} s`;

function bestText(cell: ClassCell): string | null {
  if (isJobSkill(cell.latest)) return null;
  const quickest = quickestOf(cell);
  const truest = truestOf(cell);
  const parts = [
    ...(quickest === null ? [] : [seconds(quickest.duration_ms)]),
    ...(truest === null || truest.stops.length === 0 ? [] : [`worst stop ${worstStop(truest).toFixed(1)}`]),
  ];
  return parts.length > 0 ? parts.join(", ") : "no opening yet";
}

/** A cell's openings, its latest attempt, and its bests under any setting. */
export function cellWords(cell: ClassCell): CellWords {
  const { opened, trials } = cell.openings;
  const { latest } = cell;
  const isJob = isJobSkill(latest);
  const right = isJob ? "right" : "opened";
  const missed = isJob ? "not right" : "missed";
  const time = isJob ? minutesText(latest.duration_ms) : seconds(latest.duration_ms);
  return {
    openings: `${opened} of ${trials} ${right}`,
    latest: `${latest.opened ? right : missed} in ${time}, ${dayText(latest.startedAt)}`,
    best: bestText(cell),
  };
}

/** When someone has shown a skill, or what would show it. */
export function masteryWords({ skill, isDeclared, declaredAt, scores }: Mastery): string {
  const isJob = isJobSkill(skill);
  if (isDeclared) return `shown at ${isJob ? "job" : "attempt"} ${declaredAt}`;
  const wanted = openingsWanted(scores.at(-1) ?? 0);
  if (wanted === 1) return `one more ${isJob ? "job right" : "opening"} would show it`;
  return `${wanted} ${isJob ? "jobs right" : "openings"} in a row would show it`;
}
