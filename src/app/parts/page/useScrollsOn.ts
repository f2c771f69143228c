import { type RefObject, useEffect, useRef, useState } from "react";

/**
 * Whether a panel that scrolls has more below what is in view.
 *
 * @returns refs for the panel and for an empty element at its end, and whether that end is out of view
 */
export function useScrollsOn(): {
  readonly panel: RefObject<HTMLElement | null>;
  readonly end: RefObject<HTMLDivElement | null>;
  readonly hasMore: boolean;
} {
  const panel = useRef<HTMLElement | null>(null);
  const end = useRef<HTMLDivElement | null>(null);
  const [hasMore, setMore] = useState(false);
  useEffect(() => {
    const element = end.current;
    if (element === null || panel.current === null) return;
    const watch = new IntersectionObserver(
      ([entry]) => setMore(entry !== undefined && !entry.isIntersecting && isScrolling(panel.current)),
      { root: panel.current, rootMargin: "0px 0px 4px 0px" },
    );
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return { panel, end, hasMore };
}

const isScrolling = (element: HTMLElement | null) =>
  element !== null && getComputedStyle(element).overflowY !== "visible" && element.scrollHeight > element.clientHeight;
