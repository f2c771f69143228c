import { MASTERY_RULE, type Mastery } from "../../../logbook/mastery";
import { type CharacteristicRow, masteryCharacteristic } from "../../../logbook/masteryCharacteristic";
import { seededChance } from "../../../statistics/chance";
import { MOST_ROWS } from "./controlFigure";
import type { FigureModel } from "./figureModel";
import { percentText, rangeText } from "./numbers";

/** How near one is to having shown a skill, try by try. @param one - what a try is called */
export function masteryFigure({ scores, message }: Mastery, one: "attempt" | "job" = "attempt"): FigureModel {
  const dots = scores.map((y, i) => ({ x: i + 1, y, isMarked: y >= MASTERY_RULE.limit }));
  const high = Math.max(2, scores.length);
  const limit = [1, high].map((x) => ({ x, y: MASTERY_RULE.limit }));
  return {
    title: "Mastery",
    sentence: message,
    chart: {
      kind: "run",
      x: { label: one, domain: { low: 1, high }, isCount: true },
      y: {
        label: "score of the learning CUSUM, no unit",
        domain: { low: 0, high: Math.max(MASTERY_RULE.limit, ...scores) * 1.15 },
      },
      dots,
      lines: [
        { look: "thin", points: dots },
        { look: "limit", points: limit, label: "shown" },
      ],
      band: [],
    },
    table: {
      caption: `Score after each ${one}; the skill is shown from 3`,
      head: [one, "score"],
      rows: scores.map((score, i) => [`${i + 1}`, score.toFixed(2)]).slice(-MOST_ROWS),
    },
  };
}

const SETTING = { failureRates: [0.05, 0.1, 0.15, 0.2, 0.3, 0.4], attempts: 60, learners: 1000 };
const SEED = 20;

const takenText = ({ medianAttempts }: CharacteristicRow) => (medianAttempts === null ? "–" : `${medianAttempts}`);

/** How far the rule of mastery can be trusted: imagined learners whose rate of misses is known. */
export function characteristicFigure(): FigureModel {
  const rows = masteryCharacteristic(SETTING, seededChance(SEED));
  const at = (rate: number) => rows.find(({ failureRate }) => failureRate === rate);
  const good = at(MASTERY_RULE.adequateFailureRate);
  const bad = at(MASTERY_RULE.inadequateFailureRate);
  return {
    title: "How far mastery can be trusted",
    sentence: `Of imagined hands that miss 1 in 10, ${percentText(good?.declaredShare ?? 0)} are declared within ${SETTING.attempts} attempts, half of them by attempt ${good === undefined ? "–" : takenText(good)}; of those that miss 3 in 10, ${percentText(bad?.declaredShare ?? 0)} pass all the same.`,
    chart: {
      kind: "intervals",
      rows: rows.map(({ failureRate, declaredShare, interval }) => ({
        label: `misses ${percentText(failureRate)}`,
        value: declaredShare,
        interval,
      })),
      domain: { low: 0, high: 1 },
      axis: `share declared within ${SETTING.attempts} attempts (simulated)`,
      tickText: percentText,
    },
    table: {
      caption: `Operating characteristic, ${SETTING.learners} simulated learners each`,
      head: ["rate of misses", "declared", "95 % (Wilson)", "attempts, median"],
      rows: rows.map((row) => [
        percentText(row.failureRate),
        percentText(row.declaredShare),
        rangeText(row.interval, percentText),
        takenText(row),
      ]),
    },
  };
}
