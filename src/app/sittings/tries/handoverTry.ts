import type { HandoverTry as HandoverResult } from "../../../drill/marking/tryResult";
import type { HandoverStation } from "../../../drill/sheet/sheet";
import { drawRunSeed } from "../../../handover/run/begunRun";
import { resultOf } from "../../../handover/run/checkRun";
import { fitWorkOf } from "../../../handover/run/fitAgain";
import { handoverEnd } from "../../../records/job/handoverEnd";
import { HandoverSession } from "../../exercises/handover/run/session/handoverSession";
import type { Store } from "../../parts/page/store";
import { JobTry } from "./jobTry";
import type { TrySetup } from "./trySetup";

/** A run of a sitting is kept nowhere: a reload loses the try, and a run that was begun on the handover page stays. */
const keepNothing = () => {};

/** One handover in a sitting. The signature ends it, whatever is missing then; or the candidate does. */
export class HandoverTry extends JobTry {
  readonly kind = "handover";
  readonly session: HandoverSession;

  constructor(setup: TrySetup) {
    super(setup);
    const { profile, station, chance } = setup;
    const { hand, fit, help } = station as HandoverStation;
    const plan = { isHandsOff: hand === "simulated", isToFit: fit === "first", help };
    this.session = new HandoverSession({ profile, seed: drawRunSeed(chance), ...plan }, null, keepNothing);
  }

  get exercise(): readonly Store[] {
    return [this.session, this.session.zeroing];
  }

  /** What it came to. */
  result(): HandoverResult {
    const { run, setup, turnedBy } = this.session;
    const { isHandedOver, missing, faults, undoneSteps, fit } = resultOf(run, setup.isHandsOff);
    return {
      kind: "handover",
      ...this.common,
      isHandedOver,
      missing,
      faults: faults.map(({ code }) => ({ code })),
      undone: undoneSteps,
      ...(fit && { fit: { ...fit, ...fitWorkOf(run) } }),
      ...turnedBy.forRecord,
    };
  }

  /** How it ended, for the logbook. */
  get jobEnd() {
    const { run, setup } = this.session;
    return handoverEnd(resultOf(run, setup.isHandsOff));
  }

  protected get isOver(): boolean {
    return this.session.run.steps.at(-1)?.event.type === "duty.signed";
  }
}
