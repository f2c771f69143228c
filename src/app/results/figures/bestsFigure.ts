import { type PersonalBest, personalBests } from "../../../progress/personalBest";
import type { AttemptCondition } from "../../../records/attemptConditions";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { conditionOf } from "../../../records/conditionCode";
import { unsignedText } from "../../parts/numbers";
import type { FigureModel } from "../../pictures/charts/figureModel";
import { HELP_WORDS } from "../attemptRows";

const secondsOf = (attempt: AttemptRecord | null) =>
  attempt === null ? "–" : `${(attempt.duration_ms / 1000).toFixed(1)} s`;

const worstOf = (attempt: AttemptRecord | null) =>
  attempt === null || attempt.stops.length === 0
    ? "–"
    : unsignedText(Math.max(...attempt.stops.map(({ error }) => Math.abs(error))));

const CONDITION_NAMES = {
  "index-offset": "index offset",
  "lost-motion": "lost motion",
  "keyed-off": "keyed off",
  noise: "noise",
  "heavy-dial": "heavy dial",
  "light-dial": "light dial",
  "no-cutaway": "no cutaway",
} as const;

/** A condition as one setting among others. */
function conditionText(condition: AttemptCondition): string {
  if (condition.kind === "runout") return `runout ${condition.size} from ${condition.at}`;
  if (condition.kind === "catching") return `caught by ${condition.drag} at ${condition.at} over ${condition.arc}`;
  const name = CONDITION_NAMES[condition.kind];
  return "size" in condition ? `${name} ${condition.size}` : name;
}

/** What a record keeps of a condition, for people; words that this trainer does not know are shown as they are. */
function codeText(code: string): string {
  const condition = conditionOf(code);
  return condition === null ? code : conditionText(condition);
}

const settingText = ({ exercise, help, conditions }: PersonalBest) =>
  [...(exercise === "open" ? [] : [exercise]), HELP_WORDS[help], ...conditions.map(codeText)].join(", ");

/** One's own best, like compared with like. */
export function bestsFigure(attempts: readonly AttemptRecord[]): FigureModel {
  const bests = personalBests(attempts);
  return {
    title: "Your best",
    sentence: "Your own attempts, compared only with attempts at the same settings.",
    chart: null,
    table: {
      caption: "Your best under each setting",
      head: ["setting", "attempts", "fastest opening", "smallest worst stop, graduations"],
      rows: bests.map((best) => [
        settingText(best),
        `${best.attempts}`,
        secondsOf(best.quickest),
        worstOf(best.truest),
      ]),
    },
  };
}
