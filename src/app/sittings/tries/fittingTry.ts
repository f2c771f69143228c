import type { FittingTry as FittingTryResult } from "../../../drill/marking/tryResult";
import { fittingResult } from "../../../fitting/fittingResult";
import { fittingEnd } from "../../../records/job/fittingEnd";
import { FittingSession } from "../../exercises/fitting/fittingSession";
import { JobTry } from "./jobTry";
import type { TrySetup } from "./trySetup";

/** One dial to be fitted in a sitting. The word that it is fitted ends it, whatever is wrong then; or the candidate does. */
export class FittingTry extends JobTry {
  readonly kind = "fitting";
  readonly session: FittingSession;

  constructor(setup: TrySetup) {
    super(setup);
    this.session = new FittingSession(setup.profile, setup.chance);
  }

  get exercise() {
    return [this.session];
  }

  /** What it came to. */
  result(): FittingTryResult {
    const { faults, ...rest } = this.fitted;
    return { kind: "fitting", ...this.common, ...rest, faults: faults.map((code) => ({ code })) };
  }

  /** How it ended, for the logbook. */
  get jobEnd() {
    return fittingEnd(this.fitted);
  }

  protected get isOver(): boolean {
    return this.session.chart.getSnapshot().value === "declared";
  }

  private get fitted() {
    const { assembly, lock, chart } = this.session;
    return fittingResult(assembly, lock, chart.getSnapshot().context);
  }
}
