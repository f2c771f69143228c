import { type RefObject, useEffect, useRef } from "react";

/**
 * Finds the focus again where the button that was pressed went away with all around it: it goes to the first heading of
 * what came instead. That heading has `tabIndex={-1}`.
 *
 * @param shown - which of the things that take each other's place is there
 * @returns the `ref` of what holds the heading
 */
export function useFoundFocus(shown: unknown): RefObject<HTMLDivElement | null> {
  const place = useRef<HTMLDivElement>(null);
  const before = useRef(shown);
  useEffect(() => {
    if (before.current === shown) return;
    before.current = shown;
    if (document.activeElement === document.body) place.current?.querySelector<HTMLElement>("h2")?.focus();
  }, [shown]);
  return place;
}
