import type { Milliseconds } from "../../lock/dial";
import { secondsText } from "../parts/timeText";

/** The result in one short sentence. */
export function headline({ opened, time_ms }: { readonly opened: boolean; readonly time_ms: Milliseconds }): string {
  return opened ? `Opened in ${secondsText(time_ms)}.` : `Did not open, after ${secondsText(time_ms)}.`;
}
