import type { ChangeTry as ChangeResult } from "../../../drill/marking/tryResult";
import { leftBy } from "../../../handover/change/changeOutcome";
import { tellChange } from "../../../handover/change/tellChange";
import { changeEnd } from "../../../records/job/changeEnd";
import { ChangeSession } from "../../exercises/handover/change/changeSession";
import { JobTry } from "./jobTry";
import type { TrySetup } from "./trySetup";

/** One change of a combination in a sitting. It ends with the door shut, or when the candidate says so. */
export class ChangeTry extends JobTry {
  readonly kind = "change";
  readonly session: ChangeSession;

  constructor(setup: TrySetup) {
    super(setup);
    const { profile, station, plan, chance, conditions } = setup;
    this.session = new ChangeSession(
      { profile, help: station.help, wanted: plan.combination, weight: conditions.dial },
      chance,
    );
  }

  get exercise() {
    return [this.session];
  }

  /** What it came to. */
  result(): ChangeResult {
    const { change, turnedBy } = this.session;
    return {
      kind: "change",
      ...this.common,
      combination: change.wanted,
      outcome: leftBy(change),
      proofs: change.proofs,
      faults: tellChange(change).map(({ code, size }) => ({ code, size })),
      ...turnedBy.forRecord,
    };
  }

  /** How it ended, for the logbook. */
  get jobEnd() {
    return changeEnd(this.session.change);
  }

  protected get isOver(): boolean {
    return this.session.change.isDoorShut;
  }
}
