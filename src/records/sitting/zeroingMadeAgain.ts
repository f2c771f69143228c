import { createActor } from "xstate";
import type { ReadingTaken, ZeroingTry } from "../../drill/marking/tryResult";
import type { ZeroingStation } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { stationRules } from "../../drill/sheet/stationRules";
import type { Turn } from "../../lock/dial";
import type { Problem } from "../../wording/problem";
import { zeroingMachine } from "../../zeroing/zeroingMachine";
import type { ZeroingRules } from "../../zeroing/zeroingRules";
import { sideResult } from "../../zeroing/zeroResult";
import { checkProblem } from "./checkWords";

/** What readings come to by the rules of their station. */
type Made = Pick<ZeroingTry, "verdicts" | "means" | "refused">;

/** Which direction is read in a state of the chart; null where the readings are over. */
const askedIn = (value: string, { order: [first, second] }: ZeroingRules): Turn | null => {
  if (value === "firstSeries") return first;
  return value === "secondSeries" ? second : null;
};

/** Runs the zeroing chart over readings; null where one is from a direction that was not asked, or after the end. */
function chartAfter(readings: readonly ReadingTaken[], rules: ZeroingRules) {
  const chart = createActor(zeroingMachine(rules)).start();
  chart.send({ type: "ring.clamped" });
  for (const { turn, deviation, refusal } of readings) {
    if (askedIn(chart.getSnapshot().value, rules) !== turn) return null;
    if (refusal === null) chart.send({ type: "reading.accepted", reading: { deviation, cam: 0 } });
    else chart.send({ type: "reading.refused", reason: refusal, deviation });
  }
  return chart.getSnapshot();
}

/** What the readings of a try come to; null where its series did not ask for one of them. */
function madeFrom(readings: readonly ReadingTaken[], rules: ZeroingRules): Made | null {
  const chart = chartAfter(readings, rules);
  if (chart === null) return null;
  const { accepted, refused, wanted } = chart.context;
  const asked = askedIn(chart.value, rules);
  const side = (turn: Turn) =>
    turn !== asked && accepted[turn].length >= Math.max(2, wanted[turn])
      ? sideResult(
          accepted[turn].map(({ deviation }) => deviation),
          rules,
        )
      : null;
  const [left, right] = [side("left"), side("right")];
  return {
    verdicts: { left: left?.verdict ?? null, right: right?.verdict ?? null },
    means: { left: left?.mean ?? null, right: right?.mean ?? null },
    refused: refused.left + refused.right,
  };
}

/** A mean is a sum: another order of adding may differ in the last bits. */
const SAME = 1e-6;

const isSameMean = (one: number | null, other: number | null) =>
  one === null || other === null ? one === other : Math.abs(one - other) <= SAME;

const isSame = (one: Made, other: Made) =>
  one.refused === other.refused &&
  (["left", "right"] as const).every(
    (turn) => one.verdicts[turn] === other.verdicts[turn] && isSameMean(one.means[turn], other.means[turn]),
  );

/** What keeps a try at setting zero from following from its own readings, or undefined. */
export function zeroingMisfit(one: ZeroingTry, station: ZeroingStation): Problem | undefined {
  const { readings } = one;
  if (readings === undefined || one.isBrokenOff) return undefined;
  const rules = stationRules(station, stationProfile(station));
  const far = readings.findIndex(
    ({ deviation, refusal }) => refusal === null && Math.abs(deviation) > rules.captureWindow,
  );
  if (far >= 0) return checkProblem("far-stop", [], { number: far + 1 });
  const made = madeFrom(readings, rules);
  if (made === null) return checkProblem("stop-not-asked", []);
  return isSame(made, one) ? undefined : checkProblem("another-zero", []);
}
