import { inspectionEnd } from "../../../../records/job/inspectionEnd";
import { WorkNotes } from "../../../keeping/workNotes";
import type { InspectionSession } from "./inspectionSession";

/** Watches fits that are judged, and takes each down when the answer is given. */
export class InspectionNotes extends WorkNotes<InspectionSession> {
  protected workedOn() {
    return this.work.lock;
  }

  protected hasBegun() {
    return this.work.log.length > 0 || this.hasEnded();
  }

  protected hasEnded() {
    return this.work.isNamed;
  }

  protected help() {
    return this.work.help;
  }

  protected end() {
    return inspectionEnd(this.work.result);
  }
}
