import type { InspectionTry as InspectionTryResult } from "../../../drill/marking/tryResult";
import { inspectionEnd } from "../../../records/job/inspectionEnd";
import { InspectionSession } from "../../exercises/fitting/find/inspectionSession";
import { JobTry } from "./jobTry";
import type { TrySetup } from "./trySetup";

/** One fit to be judged in a sitting. The answer ends it; or the candidate does. */
export class InspectionTry extends JobTry {
  readonly kind = "inspection";
  readonly session: InspectionSession;

  constructor(setup: TrySetup) {
    super(setup);
    this.session = new InspectionSession(setup.profile, setup.station.help, setup.chance);
  }

  get exercise() {
    return [this.session];
  }

  /** What it came to. */
  result(): InspectionTryResult {
    return { kind: "inspection", ...this.common, ...this.session.result };
  }

  /** How it ended, for the logbook. */
  get jobEnd() {
    return inspectionEnd(this.session.result);
  }

  protected get isOver(): boolean {
    return this.session.isNamed;
  }
}
