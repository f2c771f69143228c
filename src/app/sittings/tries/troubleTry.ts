import type { TroubleTry as TroubleResult } from "../../../drill/marking/tryResult";
import type { TroubleStation } from "../../../drill/sheet/sheet";
import { markDiagnosis } from "../../../handover/trouble/markDiagnosis";
import { stationTrouble } from "../../../handover/trouble/stationTrouble";
import { TROUBLE_GUIDE } from "../../../handover/trouble/troubleGuide";
import { troubleResult } from "../../../handover/trouble/troubleResult";
import type { JobEnd } from "../../../records/job/jobNote";
import { troubleEnd } from "../../../records/job/troubleEnd";
import { TroubleSession } from "../../exercises/handover/trouble/troubleSession";
import { JobTry } from "./jobTry";
import { keptEnd } from "./jobTryRecord";
import type { TrySetup } from "./trySetup";

/** The exercise of a try, by the chance of that try alone. */
function troubleSession({ profile, station, chance }: TrySetup): TroubleSession {
  const asked = station as TroubleStation;
  const { pool, seed, task } = stationTrouble(profile, asked, chance);
  return new TroubleSession({ lock: profile.id, pool, seed, help: asked.help }, chance, task);
}

/** One hidden condition in a sitting. It ends when the diagnosis is left to stand, or when the candidate says so. */
export class TroubleTry extends JobTry {
  readonly kind = "trouble";
  readonly session: TroubleSession;

  constructor(setup: TrySetup) {
    super(setup);
    this.session = troubleSession(setup);
  }

  get exercise() {
    return [this.session];
  }

  /** What it came to. */
  result(): TroubleResult {
    const { task, memory, bench, turnedBy } = this.session;
    const { named, tries, measurements } = memory;
    const { trouble } = task;
    const mark = named === null ? null : markDiagnosis(trouble, named, bench.log);
    const isNamedRight = mark?.isRight === true;
    const isGraduations = TROUBLE_GUIDE[trouble.kind].unit === "graduations";
    return {
      kind: "trouble",
      ...this.common,
      condition: trouble.kind,
      named: named?.kind ?? null,
      isNamedRight,
      sizeError: isNamedRight && isGraduations ? (mark?.sizeError ?? null) : null,
      tries,
      measurements,
      ...turnedBy.forRecord,
    };
  }

  /** How it ended, for the logbook. */
  get jobEnd(): JobEnd {
    const { task, setup, memory, bench } = this.session;
    const { named } = memory;
    const { time_ms } = this.common;
    if (named === null) return keptEnd(this.result());
    const mark = markDiagnosis(task.trouble, named, bench.log);
    const { seed, pool } = setup;
    return troubleEnd(troubleResult({ task, seed, pool, named, mark, counts: memory, time_ms }));
  }

  // The condition is not told in a sitting, so the bench itself never closes.
  protected get isOver(): boolean {
    return false;
  }
}
