import { type CharacteristicRow, masteryCharacteristic } from "../../../progress/masteryCharacteristic";
import { rateWords } from "../../../progress/masteryWords";
import { MASTERY_RULE, type MasteryRule } from "../../../records/masteryRule";
import { percentText } from "../../parts/numbers";
import type { FigureModel } from "../../pictures/charts/figureModel";

/** Rates of misses that are shown beside those of the rule. */
const RATES = [0.05, 0.1, 0.2, 0.3, 0.4];
/** Attempts granted. */
export const GRANTED = 100;

const ofHundred = (share: number) => {
  const count = Math.round(100 * share);
  if (count === 0 && share > 0) return "fewer than 1 of 100";
  return count === 100 && share < 1 ? "more than 99 of 100" : `${count} of 100`;
};

const takenText = ({ medianAttempts }: CharacteristicRow) =>
  medianAttempts === null ? `more than ${GRANTED}` : `${medianAttempts}`;

/** What a rule does to people whose rate of misses is known, in words. */
export function characteristicSentence(rule: MasteryRule): string {
  const [good, bad] = masteryCharacteristic([rule.adequateFailureRate, rule.inadequateFailureRate], GRANTED, rule);
  if (good === undefined || bad === undefined) return "";
  const half = good.medianAttempts === null ? "" : ` (half of them by attempt ${good.medianAttempts})`;
  return `In ${GRANTED} attempts this rule calls ready ${ofHundred(good.readyShare)} people who miss ${rateWords(good.failureRate)}${half}, and by mistake also ${ofHundred(bad.readyShare)} who miss ${rateWords(bad.failureRate)}. In the next ${GRANTED} attempts, ${ofHundred(bad.lapseShare)} of those lose it again, and ${ofHundred(good.lapseShare)} of the good ones.`;
}

/** How far readiness can be trusted: people whose rate of misses is known. */
export function characteristicFigure(rule: MasteryRule = MASTERY_RULE): FigureModel {
  const own = [rule.adequateFailureRate, rule.inadequateFailureRate];
  const rates = [...new Set([...RATES, ...own])].sort((a, b) => a - b);
  const rows = masteryCharacteristic(rates, GRANTED, rule);
  return {
    title: "How far readiness can be trusted",
    sentence: characteristicSentence(rule),
    chart: {
      kind: "intervals",
      rows: rows.map(({ failureRate, readyShare }) => ({
        label: `misses ${percentText(failureRate)}`,
        value: readyShare,
        interval: null,
      })),
      domain: { low: 0, high: 1 },
      axis: `share called ready within ${GRANTED} attempts`,
      tickText: percentText,
    },
    table: {
      caption: `What the rule does to people of a known rate of misses, in ${GRANTED} attempts`,
      head: ["rate of misses", "called ready", "half of them by attempt", `lose it in the next ${GRANTED}`],
      rows: rows.map((row) => [
        percentText(row.failureRate),
        percentText(row.readyShare),
        takenText(row),
        percentText(row.lapseShare),
      ]),
    },
    note: "Worked out from the distribution of the score after each attempt (a Markov chain; Brook and Evans, 1972), for people who miss at the same rate all the time. Real people change, so take these as a guide.",
  };
}
