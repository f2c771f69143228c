import type { ServiceTry as ServiceTryResult } from "../../../drill/marking/tryResult";
import { serviceEnd } from "../../../records/job/serviceEnd";
import { visitResult } from "../../../service/visitResult";
import { drawSeed } from "../../../statistics/drawSeed";
import { VisitSession } from "../../exercises/service/visitSession";
import { JobTry } from "./jobTry";
import type { TrySetup } from "./trySetup";

/** One service visit in a sitting. Leaving the site ends it, whatever is wrong then; or the candidate does. */
export class ServiceTry extends JobTry {
  readonly kind = "service";
  readonly session: VisitSession;

  constructor(setup: TrySetup) {
    super(setup);
    const { profile, station, chance } = setup;
    const visit = { lock: profile.id, seed: drawSeed(chance), help: station.help };
    this.session = new VisitSession(visit, chance, profile);
  }

  get exercise() {
    return [this.session];
  }

  /** What it came to. */
  result(): ServiceTryResult {
    return { kind: "service", ...this.common, ...visitResult(this.session.visit) };
  }

  /** How it ended, for the logbook. */
  get jobEnd() {
    return serviceEnd(visitResult(this.session.visit), this.session.setup.seed);
  }

  protected get isOver(): boolean {
    return this.session.visit.isOver;
  }
}
