/** Keys that go from one row of a list to another, and the place that each leads to. */
const PLACE_AFTER: Readonly<Record<string, (place: number, inView: number, last: number) => number>> = {
  ArrowUp: (place) => place - 1,
  ArrowDown: (place) => place + 1,
  PageUp: (place, inView) => place - inView,
  PageDown: (place, inView) => place + inView,
  Home: () => 0,
  End: (_place, _inView, last) => last,
};

/**
 * Place of the row that a key leads to, from 0 to the last; null for a key that leads nowhere.
 *
 * @param inView - rows that are in view at once
 * @param count - rows in the list
 */
export function placeAfter(key: string, place: number, inView: number, count: number): number | null {
  const last = count - 1;
  const next = PLACE_AFTER[key]?.(place, Math.max(1, inView), last);
  return next === undefined ? null : Math.min(Math.max(next, 0), last);
}

/** Place of the row that an element belongs to, or null. */
export function placeOfElement(element: EventTarget): number | null {
  const place = element instanceof HTMLElement ? element.dataset.place : undefined;
  return place === undefined ? null : Number(place);
}

/** What the place of a row in the region hangs on. */
export interface Laid {
  readonly name: string;
  /** Rows that have come in above the view so far. */
  readonly moved: number;
  readonly rowHeight: number;
}

/** Where the region is to be scrolled to, so that the same rows stay in view; another list is begun at its top. */
export function scrollTopAfter(scrollTop: number, before: Laid, now: Laid): number {
  const rows = scrollTop / before.rowHeight;
  // At the top of the list, what comes in is shown.
  if (before.name !== now.name || rows === 0) return 0;
  return (rows + now.moved - before.moved) * now.rowHeight;
}
