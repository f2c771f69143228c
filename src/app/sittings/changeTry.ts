import type { ChangeTry as ChangeResult } from "../../drill/marking/tryResult";
import { SET_OFF_LEAST, settingErrors } from "../../handover/change/changeFault";
import { opensTo } from "../../handover/change/opensTo";
import { type Change, tellChange } from "../../handover/change/tellChange";
import { ChangeSession } from "../handover/change/changeSession";
import { changeEnd } from "../logbook/changeEnd";
import { JobTry } from "./jobTry";
import type { TrySetup } from "./trySetup";

/** How the lock was left. Turned in the lock, the key leaves it as one that opens to nothing. */
function outcomeOf({ profile, present, wanted, setCombination }: Change): ChangeResult["outcome"] {
  if (setCombination === null) return "spoiled";
  const moved = settingErrors({ profile, wanted: present, setTo: setCombination });
  if (moved.every((error) => Math.abs(error) < SET_OFF_LEAST)) return "unchanged";
  return opensTo(profile, setCombination, wanted) ? "true" : "off";
}

/** One change of a combination in a sitting. It ends with the door shut, or when the candidate says so. */
export class ChangeTry extends JobTry {
  readonly kind = "change";
  readonly session: ChangeSession;

  constructor(setup: TrySetup) {
    super(setup);
    const { profile, station, plan, chance } = setup;
    this.session = new ChangeSession(profile, station.help, chance, plan.combination);
  }

  get exercise() {
    return [this.session];
  }

  /** What it came to. */
  result(): ChangeResult {
    const { change } = this.session;
    return {
      kind: "change",
      ...this.common,
      combination: change.wanted,
      outcome: outcomeOf(change),
      proofs: change.proof?.inRow ?? 0,
      faults: tellChange(change).map(({ code, size }) => ({ code, size })),
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
