import type { HandoverEvent } from "../../../../../handover/run/rules/handoverEvent";
import type { Situation } from "../../../../../handover/run/rules/situation";
import type { DoorHappening } from "./doorWork";

const EVENTS: Partial<Record<DoorHappening, HandoverEvent>> = {
  opened: { type: "combination.dialed", by: "trainee", opened: true },
  drawnAgain: { type: "bolt.drawnAgain" },
  refused: { type: "combination.dialed", by: "trainee", opened: false },
  thrown: { type: "bolt.thrown" },
  spunOff: { type: "lock.spunOff" },
};

/** Where the bolt must be for a happening to count. */
const ONLY_WITH: Partial<Record<DoorHappening, Situation["bolt"]>> = { thrown: "retracted", spunOff: "thrown" };

/** What goes into the run of what a lock did under the trainee's own hand; null for nothing. */
export function eventOf(happening: DoorHappening, bolt: Situation["bolt"]): HandoverEvent | null {
  const needed = ONLY_WITH[happening];
  return needed === undefined || needed === bolt ? (EVENTS[happening] ?? null) : null;
}
