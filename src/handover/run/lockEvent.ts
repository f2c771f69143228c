import type { LockHappening } from "./doorLock";
import type { HandoverEvent } from "./rules/handoverEvent";
import type { Situation } from "./rules/situation";

const EVENTS: Partial<Record<LockHappening, HandoverEvent>> = {
  opened: { type: "combination.dialed", by: "trainee", opened: true },
  drawnAgain: { type: "bolt.drawnAgain" },
  refused: { type: "combination.dialed", by: "trainee", opened: false },
  thrown: { type: "bolt.thrown" },
  spunOff: { type: "lock.spunOff" },
};

/** Where the bolt must be for a happening to count. */
const ONLY_WITH: Partial<Record<LockHappening, Situation["bolt"]>> = { thrown: "retracted", spunOff: "thrown" };

/** What goes into the run of what a lock did under the trainee's own hand; null for nothing. */
export function lockEvent(happening: LockHappening, bolt: Situation["bolt"]): HandoverEvent | null {
  const needed = ONLY_WITH[happening];
  return needed === undefined || needed === bolt ? (EVENTS[happening] ?? null) : null;
}
