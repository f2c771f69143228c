import type { RecordedRun } from "../../../../../handover/run/recordedRun";
import type { SourceDescription } from "../../../../../realdial/sources/sourceDescription";
import { SCREEN_SOURCE } from "../../../../../realdial/sources/sourcesSeen";

/** What shows that a dial was turned. */
const BY_DIAL: readonly string[] = ["zero.set", "combination.dialed", "combination.changed"];

/** What has turned the dial of a run that goes on: one that says nothing of it, and was dialed, the screen. */
export const turnedBefore = ({ sources, events }: RecordedRun): readonly SourceDescription[] =>
  sources ?? (events.some(({ type }) => BY_DIAL.includes(type)) ? [SCREEN_SOURCE] : []);
