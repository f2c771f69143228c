import { fittingResult } from "../../../fitting/fittingResult";
import { fittingEnd } from "../../../records/job/fittingEnd";
import { WorkNotes } from "../../keeping/workNotes";
import type { FittingSession } from "./fittingSession";

/**
 * Watches fittings, and takes each down the first time that its debrief is shown: what is mended afterwards is mended with
 * the faults in view. One that goes on after a reload is the same job.
 */
export class FittingNotes extends WorkNotes<FittingSession> {
  protected workedOn() {
    return this.work.lock;
  }

  protected hasBegun() {
    return this.work.chart.getSnapshot().context.acts > 0;
  }

  protected hasEnded() {
    return this.work.wasDeclared;
  }

  protected help() {
    return this.work.helpHad;
  }

  protected end() {
    const { assembly, lock, chart } = this.work;
    return fittingEnd(fittingResult(assembly, lock, chart.getSnapshot().context));
  }
}
