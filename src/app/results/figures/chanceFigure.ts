import { chanceOnLock, FEWEST_STOPS, fewestStops } from "../../../progress/stops/chanceOnLock";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { percentText, rangeText } from "../../parts/numbers";
import { type FigureModel, untoldFigure } from "../../pictures/charts/figureModel";

/** The hand of today, not of the first day: the latest attempts count. */
const LATEST = 200;
/** Tolerances that are shown, graduations. */
const TOLERANCES = Array.from({ length: 20 }, (_, i) => (i + 1) / 8);
/** Tolerances in the table. */
const IN_TABLE = [0.5, 0.75, 1, 1.25, 1.5, 2];

/**
 * The chance of opening a lock of a given tolerance, predicted from one's own stop errors.
 *
 * @param tolerance - of the lock that was practiced on, graduations
 */
export function chanceFigure(attempts: readonly AttemptRecord[], tolerance: number): FigureModel {
  const title = "Chance on another lock";
  const latest = attempts.slice(-LATEST);
  const here = chanceOnLock(latest, tolerance);
  if (here === null) {
    const least = fewestStops(latest);
    return untoldFigure(title, `Needs ${FEWEST_STOPS} stops at each number; the number with fewest has ${least}.`);
  }
  const curve = TOLERANCES.flatMap((x) => {
    const found = chanceOnLock(latest, x);
    return found === null ? [] : [{ x, ...found }];
  });
  return {
    title,
    sentence: `With your turns counted right, you would open a lock that allows ±${tolerance} graduations about ${percentText(here.chance)} of the time, between ${percentText(here.interval.low)} and ${percentText(here.interval.high)}.`,
    chart: {
      kind: "run",
      x: { label: "tolerance of the lock, ± graduations", domain: { low: 0, high: 2.5 }, isCount: false },
      y: { label: "chance of opening", domain: { low: 0, high: 1 }, tickText: percentText },
      dots: [{ x: tolerance, y: here.chance, isMarked: true }],
      lines: [{ look: "heavy", points: curve.map(({ x, chance }) => ({ x, y: chance })) }],
      band: curve.map(({ x, interval }) => ({ x, ...interval })),
    },
    table: {
      caption: "Predicted chance of opening",
      head: ["tolerance, ± graduations", "chance", "lies in"],
      rows: IN_TABLE.flatMap((one) => {
        const found = chanceOnLock(latest, one);
        return found === null ? [] : [[`${one}`, percentText(found.chance), rangeText(found.interval, percentText)]];
      }),
    },
    note: `From the mean and standard deviation of your stop errors at each number, latest ${LATEST} attempts, taken as normal; the range has 95 % confidence. Lost counts are not in it.`,
  };
}
