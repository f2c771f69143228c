import { type RefObject, useEffect, useRef, useState } from "react";
import { dropPlace } from "./dropPlace";

/** A thing under way: from where, and to where it would go now. */
interface Drag {
  readonly from: number;
  readonly to: number;
}

const EDGE = 56;
const SCROLL = 14;

const itemsOf = (list: HTMLElement) => [...list.children].filter((one) => one instanceof HTMLElement);

const middleOf = (item: Element) => {
  const { top, height } = item.getBoundingClientRect();
  return top + height / 2;
};

/** Lets a long list come along when the pointer is near the edge of the window. */
function scrollAt(y: number): void {
  if (y < EDGE) scrollBy(0, -SCROLL);
  else if (y > innerHeight - EDGE) scrollBy(0, SCROLL);
}

/**
 * Moves things of a list by their handles (`data-handle`), by mouse, pen or finger. Escape lets go.
 *
 * @param onMove - called once, when a thing is let go at another place
 */
export function useStationDrag(list: RefObject<HTMLElement | null>, onMove: (from: number, to: number) => void) {
  const [drag, setDrag] = useState<Drag | null>(null);
  const move = useRef(onMove);
  move.current = onMove;
  useEffect(() => {
    const element = list.current;
    if (element === null) return;
    let now: Drag | null = null;
    const show = (next: Drag | null) => {
      now = next;
      setDrag(next);
    };
    const take = (event: PointerEvent) => {
      const handle = event.target instanceof Element ? event.target.closest("[data-handle]") : null;
      if (handle === null || event.button !== 0) return;
      const from = itemsOf(element).findIndex((item) => item.contains(handle));
      if (from < 0) return;
      event.preventDefault();
      element.setPointerCapture(event.pointerId);
      show({ from, to: from });
    };
    const carry = (event: PointerEvent) => {
      if (now === null) return;
      scrollAt(event.clientY);
      const to = dropPlace(itemsOf(element).map(middleOf), now.from, event.clientY);
      if (to !== now.to) show({ from: now.from, to });
    };
    const drop = () => {
      const done = now;
      show(null);
      if (done !== null && done.from !== done.to) move.current(done.from, done.to);
    };
    const letGo = () => show(null);
    const onKey = (event: KeyboardEvent) => event.key === "Escape" && letGo();
    const parts = new AbortController();
    const { signal } = parts;
    element.addEventListener("pointerdown", take, { signal });
    element.addEventListener("pointermove", carry, { signal });
    element.addEventListener("pointerup", drop, { signal });
    element.addEventListener("pointercancel", letGo, { signal });
    addEventListener("keydown", onKey, { signal });
    return () => parts.abort();
  }, [list]);
  return drag;
}
