import type { ZeroingTry } from "../../drill/marking/tryResult";
import type { ZeroingStation } from "../../drill/sheet/sheet";
import { stationProfile } from "../../drill/sheet/stationProfile";
import { stationRules } from "../../drill/sheet/stationRules";
import type { Turn } from "../../lock/dial";
import type { Problem } from "../../wording/problem";
import { readAgain, type TakenReading } from "../../zeroing/readAgain";
import { askedSide } from "../../zeroing/zeroingMachine";
import type { ZeroingRules } from "../../zeroing/zeroingRules";
import { sideResult } from "../../zeroing/zeroResult";
import { checkProblem } from "./checkWords";

/** What readings come to by the rules of their station. */
type Made = Pick<ZeroingTry, "verdicts" | "means" | "refused">;

/** What the readings of a try come to; null where its series did not ask for one of them. */
function madeFrom(readings: readonly TakenReading[], rules: ZeroingRules): Made | null {
  const chart = readAgain(readings, rules);
  if (chart === null) return null;
  const { accepted, refused, wanted } = chart.context;
  const asked = askedSide(chart.value, rules);
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
