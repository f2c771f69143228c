import { type PersonalBest, personalBests } from "../../../progress/personalBest";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { unsignedText } from "../../parts/numbers";
import type { FigureModel } from "../../pictures/charts/figureModel";
import { HELP_WORDS } from "../attemptRows";

const secondsOf = (attempt: AttemptRecord | null) =>
  attempt === null ? "–" : `${(attempt.duration_ms / 1000).toFixed(1)} s`;

const worstOf = (attempt: AttemptRecord | null) =>
  attempt === null || attempt.stops.length === 0
    ? "–"
    : unsignedText(Math.max(...attempt.stops.map(({ error }) => Math.abs(error))));

const settingText = ({ exercise, help, conditions }: PersonalBest) =>
  [...(exercise === "open" ? [] : [exercise]), HELP_WORDS[help], ...conditions].join(", ");

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
