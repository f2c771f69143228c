import type { Attempt } from "../../../dialing/attempt";
import { legArrivals } from "../../../dialing/leg";
import { type Run, stopError } from "../../../dialing/runs";
import { faceText } from "../../../dialing/words";
import { signedText } from "../../parts/signedText";
import type { ChartModel } from "./chartEvents";

/** A run in words and numbers; a dash where no number applies. */
export interface RunRow extends Run {
  readonly index: number;
  readonly number: string;
  readonly arrivals: string;
  readonly stopError: string;
}

const NONE = "\u2013";

/** The runs on the chart, one row each. */
export function runRows(attempt: Attempt, { runs, top }: ChartModel, isOver: boolean): RunRow[] {
  const { reader, profile } = attempt;
  return runs.slice(top).map((run, k) => {
    const index = top + k;
    const common = { index, turn: run.turn, from: run.from, to: run.to };
    const leg = reader.legs.find((one) => one.firstRun <= index && index <= one.lastRun && one.turn === run.turn);
    const target = leg && reader.targetOf(leg);
    if (target === undefined) return { ...common, number: NONE, arrivals: NONE, stopError: NONE };
    const isUnderWay = index === runs.length - 1 && !isOver;
    const error = stopError(run.turn, run.to, target.number, target.perTurn);
    return {
      ...common,
      number: faceText(target.number, profile),
      arrivals: String(legArrivals(run, target)),
      stopError: isUnderWay ? "not stopped yet" : signedText(error),
    };
  });
}
