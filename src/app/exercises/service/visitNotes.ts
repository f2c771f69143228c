import { serviceEnd } from "../../../records/job/serviceEnd";
import { visitResult } from "../../../service/visitResult";
import { WorkNotes } from "../../keeping/workNotes";
import type { VisitSession } from "./visitSession";

/** Watches service visits, and takes each down when its debrief is shown: nothing can be done to it after that. */
export class VisitNotes extends WorkNotes<VisitSession> {
  protected workedOn() {
    return this.work.visit;
  }

  protected hasBegun() {
    return this.work.tried.length > 0;
  }

  protected hasEnded() {
    return this.work.visit.isOver;
  }

  protected help() {
    return this.work.setup.help;
  }

  protected end() {
    return serviceEnd(visitResult(this.work.visit), this.work.setup.seed);
  }
}
