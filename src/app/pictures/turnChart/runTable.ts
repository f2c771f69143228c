import type { Attempt } from "../../../dialing/attempt";
import { legArrivals } from "../../../dialing/leg";
import { stopError } from "../../../dialing/runs";
import { capital, faceText } from "../../../dialing/words";
import { signedText } from "../../parts/signedText";
import type { ChartModel } from "./chartEvents";
import { positionText } from "./chartWords";
import type { ChartRun } from "./turnPath";

const NONE = "–";

/** Number, arrivals and stop error of a run; a dash where no number applies. */
function numberCells({ reader, profile }: Attempt, run: ChartRun, index: number, isUnderWay: boolean) {
  const leg = reader.legs.find((one) => one.firstRun <= index && index <= one.lastRun && one.turn === run.turn);
  const target = leg && reader.targetOf(leg);
  if (target === undefined) return { number: NONE, arrivals: NONE, error: NONE };
  const error = stopError(run.turn, run.to, target.number, target.perTurn);
  return {
    number: faceText(target.number, profile),
    arrivals: String(legArrivals(run, target)),
    error: isUnderWay ? "not stopped yet" : signedText(error),
  };
}

/**
 * The chart as a table, one row for each run on it.
 *
 * @param shows - whether the last run has stopped, and whether readings and sizes are told
 */
export function runTable(
  attempt: Attempt,
  { runs, top }: ChartModel,
  { isOver, hasFigures }: { readonly isOver: boolean; readonly hasFigures: boolean },
) {
  const rows = runs.slice(top).map((run, k) => {
    const index = top + k;
    const { number, arrivals, error } = numberCells(attempt, run, index, index === runs.length - 1 && !isOver);
    const turn = capital(run.turn);
    return hasFigures
      ? [turn, positionText(run.from, attempt), positionText(run.to, attempt), number, arrivals, error]
      : [turn, number, arrivals];
  });
  const head = hasFigures
    ? ["Turn", "From", "To", "Number", "Arrivals", "Stop error, graduations"]
    : ["Turn", "Number", "Arrivals"];
  return { caption: "Runs of the attempt", head, rows };
}
