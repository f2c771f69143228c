import { type ClassCell, quickestOf, truestOf } from "../../logbook/classTable";
import { isJobSkill } from "../../logbook/jobRecord";
import { type Mastery, openingsWanted } from "../../logbook/mastery";
import { worstStop } from "../../logbook/personalBest";
import { dayText } from "../logbook/attemptRows";

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
  readonly best: string;
}

const seconds = (time_ms: number) => `${(time_ms / 1000).toFixed(1)} s`;

function bestText(cell: ClassCell): string {
  const quickest = quickestOf(cell);
  const truest = truestOf(cell);
  const parts = [
    ...(quickest === null ? [] : [seconds(quickest.duration_ms)]),
    ...(truest === null || truest.stops.length === 0 ? [] : [`worst stop ${worstStop(truest).toFixed(1)}`]),
  ];
  if (parts.length > 0) return parts.join(", ");
  return isJobSkill(cell.latest) ? "no best of a job" : "no opening yet";
}

/** A cell's openings, its latest attempt, and its bests under any setting. */
export function cellWords(cell: ClassCell): CellWords {
  const { opened, trials } = cell.openings;
  const { latest } = cell;
  const right = isJobSkill(latest) ? "right" : "opened";
  return {
    openings: `${opened} of ${trials} ${right}`,
    latest: `${latest.opened ? right : "missed"} in ${seconds(latest.duration_ms)}, ${dayText(latest.startedAt)}`,
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
