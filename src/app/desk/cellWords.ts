import { quickestOf, type StandingCell, truestOf } from "../../progress/classTable";
import type { MasteryStanding } from "../../progress/mastery";
import { worstStop } from "../../progress/personalBest";
import { isJobSkill } from "../../records/jobRecord";
import { triedRight } from "../../records/triedRight";
import { countText } from "../../wording/amountWords";
import { shortDayText } from "../parts/moments";
import { minutesText } from "../results/jobRows";

/** How far someone is at a skill. */
export type CellState = "ready" | "lapsed" | "not-yet" | "none";

/** The state of a cell; a person without an attempt has none. */
export function cellState(cell: StandingCell | null | undefined): CellState {
  if (!cell) return "none";
  return cell.mastery.state;
}

const STATE_WORDS = { ready: "Ready", lapsed: "No longer ready", "not-yet": "Not ready yet" } as const;

/** A state in words. @param isJob - whether the skill is one of jobs */
export function stateWord(state: CellState, isJob: boolean): string {
  if (state === "none") return isJob ? "No job" : "No attempt";
  return STATE_WORDS[state];
}

/** One cell in words and figures. */
export interface CellWords {
  readonly openings: string;
  readonly latest: string;
  /** Null for jobs, which are not raced. */
  readonly best: string | null;
}

const seconds = (time_ms: number) => `${(time_ms / 1000).toFixed(1)} s`;

function bestText(cell: StandingCell): string | null {
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
export function cellWords(cell: StandingCell): CellWords {
  const { opened, trials } = cell.openings;
  const { latest } = cell;
  const isJob = isJobSkill(latest);
  const right = isJob ? "right" : "opened";
  const missed = isJob ? "not right" : "missed";
  const time = isJob ? minutesText(latest.duration_ms) : seconds(latest.duration_ms);
  return {
    openings: `${opened} of ${trials} ${right}`,
    latest: `${triedRight(latest) ? right : missed}, ${time}, ${shortDayText(latest.startedAt)}`,
    best: bestText(cell),
  };
}

/** Since when someone is ready at a skill, or what it takes. */
export function masteryWords({ skill, state, shownAt, wanted, lapse }: MasteryStanding): string {
  const isJob = isJobSkill(skill);
  const one = isJob ? "job" : "attempt";
  if (state === "ready") return `since ${one} ${shownAt}`;
  const right = isJob ? "right job" : "opening";
  const takes = wanted === 1 ? `1 more ${right} needed` : `${countText(wanted, right)} in a row needed`;
  if (lapse === undefined) return takes;
  const why = lapse.by === "time" ? `no practice for ${lapse.days} days` : `too many misses by ${one} ${lapse.at}`;
  return `${why}; ${takes}`;
}
