import type { HandoverResult } from "../../../../../handover/run/checkRun";
import { type HandoverRecord, handoverRecord } from "../../../../../records/handover/handoverRecord";
import { mean } from "../../../../../statistics/sample";
import type { HandoverSession } from "../session/handoverSession";

/** The record of a handover, or null while none is written. */
export function recordOf(session: HandoverSession, result: HandoverResult): HandoverRecord | null {
  const { form, setup, zeroing, recorded } = session;
  if (form === null || session.run.situation.record !== "written") return null;
  const { right, left } = zeroing.memory.accepted;
  const average = (side: typeof right) => mean(side.map(({ deviation }) => deviation));
  const isByHand = right.length > 0 && left.length > 0 && !setup.isHandsOff;
  return handoverRecord({
    form,
    result,
    profileId: setup.profile.id,
    seed: setup.seed,
    drawnBy: recorded.drawnBy,
    sources: recorded.sources,
    doubts: recorded.doubts,
    height_in: recorded.scene.height_in,
    zero: isByHand ? { right: average(right), left: average(left) } : null,
  });
}
