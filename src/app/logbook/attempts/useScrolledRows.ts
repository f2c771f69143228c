import { defaultRangeExtractor, useVirtualizer } from "@tanstack/react-virtual";
import { type CSSProperties, type RefObject, useEffect, useLayoutEffect, useRef } from "react";
import type { AttemptWindow } from "./attemptWindow";
import { type Laid, scrollTopAfter } from "./rowPlaces";
import { useHeldRow } from "./useHeldRow";
import { useRowHeight } from "./useRowHeight";

/** Height of the head, which stays in view over the rows, pixels. */
const HEAD = 30;

/** Rows beside those in view that are drawn, and read ahead. */
const BESIDE = 6;

/** A row that is drawn. */
interface DrawnRow {
  readonly place: number;
  /** Room of the rows between this one and the one drawn before it, pixels. */
  readonly gap: number;
}

/** Attempts as rows of one height in a region that scrolls: which are drawn, and which of them the keys are at. */
export function useScrolledRows(attempts: AttemptWindow, count: number) {
  const rowHeight = useRowHeight();
  const region = useRef<HTMLDivElement>(null);
  const held = useHeldRow(region, count);
  const virtualizer = useVirtualizer<HTMLDivElement, HTMLTableRowElement>({
    count,
    getScrollElement: () => region.current,
    estimateSize: () => rowHeight,
    overscan: BESIDE,
    paddingStart: HEAD,
    scrollPaddingStart: HEAD,
    rangeExtractor: (range) => held.among(defaultRangeExtractor(range)),
  });
  const first = virtualizer.range?.startIndex ?? 0;
  const last = virtualizer.range?.endIndex ?? 0;

  useEffect(() => attempts.look(first - BESIDE, last + BESIDE), [attempts, first, last]);
  useLayoutEffect(() => held.settle((place) => virtualizer.scrollToIndex(place, { align: "auto" })));
  useKeptView({ attempts, region, rowHeight, onMoved: held.move, onOtherHeight: () => virtualizer.measure() });

  let end = HEAD;
  const drawn = virtualizer.getVirtualItems().map((item): DrawnRow => {
    const gap = item.start - end;
    end = item.end;
    return { place: item.index, gap };
  });
  const sizes: CSSProperties & Record<`--${string}`, string> = { "--row": `${rowHeight}px`, "--head": `${HEAD}px` };
  const top = Math.min(last, Math.ceil((virtualizer.scrollOffset ?? 0) / rowHeight));
  const inView = Math.floor(((virtualizer.scrollRect?.height ?? 0) - HEAD) / rowHeight);
  return {
    region,
    sizes,
    drawn,
    /** Room of the rows after the last one drawn, pixels. */
    rest: virtualizer.getTotalSize() - end,
    /** Place of the row that the Tab key comes to. */
    tabStop: held.tabStop(top, last),
    hands: held.hands(inView),
  };
}

interface KeptView {
  readonly attempts: AttemptWindow;
  readonly region: RefObject<HTMLDivElement | null>;
  readonly rowHeight: number;
  readonly onMoved: (rows: number) => void;
  readonly onOtherHeight: () => void;
}

/** Keeps the same rows in view when attempts come in above them, or rows get another height. */
function useKeptView({ attempts: { name, moved }, region, rowHeight, onMoved, onOtherHeight }: KeptView): void {
  const laid = useRef<Laid>({ name, moved, rowHeight });
  // biome-ignore lint/correctness/useExhaustiveDependencies: only these move rows; what is told of it changes at every draw
  useLayoutEffect(() => {
    const before = laid.current;
    const now = { name, moved, rowHeight };
    laid.current = now;
    if (before.rowHeight !== rowHeight) onOtherHeight();
    const scroller = region.current;
    if (scroller !== null) scroller.scrollTop = scrollTopAfter(scroller.scrollTop, before, now);
    if (before.name === name && before.moved !== moved) onMoved(moved - before.moved);
  }, [name, moved, rowHeight]);
}
