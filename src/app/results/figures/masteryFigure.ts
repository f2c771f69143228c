import type { Mastery } from "../../../progress/mastery";
import { rateWords } from "../../../progress/masteryWords";
import { READY_SCORE } from "../../../records/masteryRule";
import type { FigureModel } from "../../pictures/charts/figureModel";
import { MOST_ROWS } from "./controlFigure";

/** How near one is to being ready, try by try. @param one - what a try is called */
export function masteryFigure(
  { scores, wasReady, message, rule }: Mastery,
  one: "attempt" | "job" = "attempt",
): FigureModel {
  const dots = scores.map((y, i) => ({ x: i + 1, y, isMarked: wasReady[i] === true }));
  const high = Math.max(2, scores.length);
  const limit = [1, high].map((x) => ({ x, y: READY_SCORE }));
  const [good, bad] = [rateWords(rule.adequateFailureRate), rateWords(rule.inadequateFailureRate)];
  return {
    title: "Readiness",
    sentence: message,
    chart: {
      kind: "run",
      x: { label: `${one}; ringed: ready`, domain: { low: 1, high }, isCount: true },
      y: { label: "score, no unit", domain: { low: 0, high: READY_SCORE * 1.15 } },
      dots,
      lines: [
        { look: "thin", points: dots },
        { look: "limit", points: limit, label: "ready" },
      ],
      band: [],
    },
    table: {
      caption: `Score after each ${one}; ready from ${READY_SCORE}, after at least ${rule.minimumAttempts} ${one}s`,
      head: [one, "score", "ready"],
      rows: scores.map((score, i) => [`${i + 1}`, score.toFixed(2), wasReady[i] ? "yes" : "no"]).slice(-MOST_ROWS),
    },
    note: `The score is a learning CUSUM (LC-CUSUM; Biau and Porcher, 2010). Each ${one} adds the logarithm of how much likelier its result is from someone who misses ${good} than from someone who misses ${bad}. The score never falls below 0, so bad tries are forgotten and luck has many chances: that is why this rule errs more often than a single test would. A second score (CUSUM) counts misses while you are ready and ends readiness at 4.`,
  };
}
