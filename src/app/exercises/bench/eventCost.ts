import { useLayoutEffect } from "react";

const BEGUN = "gatefall.event.begun";
/** Name of the page's own measure of one dial event: from the input to the redrawn page, before paint. */
export const EVENT_MEASURE = "gatefall.event";

let isMeasuring = false;
let isPending = false;

/** Switches the measure on for a page whose address asks for it: entries are kept for good, so it is off otherwise. */
export function measureEvents(isOn: boolean): void {
  isMeasuring = isOn;
}

/** An input begins. */
export function eventBegun(): void {
  if (!isMeasuring || isPending) return;
  isPending = true;
  performance.mark(BEGUN);
}

/** Ends the measure when the page has been brought up to the change. */
export function useEventDone(version: number): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: runs once for every redraw of a new version
  useLayoutEffect(() => {
    if (!isPending) return;
    isPending = false;
    performance.measure(EVENT_MEASURE, BEGUN);
    performance.clearMarks(BEGUN);
  }, [version]);
}
