import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import { SCREEN_SOURCE, type SourcesSeen } from "../../../../../realdial/sources/sourcesSeen";

/** What shows that a dial was turned. */
const BY_DIAL: readonly string[] = ["zero.set", "combination.dialed", "combination.changed"];

/** Takes down what has turned the dial of a run that goes on, and what made its turns doubtful: of one that was dialed and says nothing, the screen. */
export function noteTurnedBefore({ sources, doubts = [], events }: RecordedRun, turnedBy: SourcesSeen): void {
  const isDialed = events.some(({ type }) => BY_DIAL.includes(type));
  for (const one of sources ?? (isDialed ? [SCREEN_SOURCE] : [])) turnedBy.note(one);
  for (const why of doubts) turnedBy.doubt(why);
}
