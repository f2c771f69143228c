import { type FocusEvent, type KeyboardEvent, type RefObject, useRef, useState } from "react";
import { placeAfter, placeOfElement } from "./rowPlaces";

/** The row that the keys are at. */
interface Held {
  readonly place: number;
  /** Otherwise it had the focus last. */
  readonly hasFocus: boolean;
}

/** A row that is to have the focus once it is drawn. */
interface Wanted {
  readonly place: number;
  readonly isShown: boolean;
}

const hasModifier = ({ altKey, ctrlKey, metaKey }: KeyboardEvent) => altKey || ctrlKey || metaKey;

/** Which row of a list the keys are at, though only some rows are drawn; it keeps the focus wherever the list scrolls. */
export function useHeldRow(region: RefObject<HTMLElement | null>, count: number) {
  const [held, setHeld] = useState<Held>({ place: 0, hasFocus: false });
  const wanted = useRef<Wanted | null>(null);
  const { hasFocus } = held;
  const place = Math.min(held.place, count - 1);
  const want = (next: Wanted) => {
    wanted.current = next;
    setHeld({ place: next.place, hasFocus: true });
  };
  return {
    /** The rows to be drawn: the one with the focus is always among them. */
    among: (places: readonly number[]): number[] =>
      !hasFocus || places.includes(place) ? [...places] : [...places, place].toSorted((one, other) => one - other),
    /** Gives the wanted row the focus, once it is drawn. */
    settle(show: (place: number) => void): void {
      if (wanted.current === null) return;
      const { place, isShown } = wanted.current;
      wanted.current = null;
      const element = region.current?.querySelector<HTMLElement>(`[data-place="${place}"]`);
      element?.focus({ preventScroll: true });
      if (!isShown) return;
      show(place);
      // The region itself may stand partly outside the window: then the page scrolls as well.
      element?.closest("tr")?.scrollIntoView({ block: "nearest" });
    },
    /** Follows the row when others come in above it. */
    move(rows: number): void {
      if (hasFocus) want({ place: place + rows, isShown: false });
      else setHeld({ place: Math.max(0, place + rows), hasFocus });
    },
    /** Place of the row that the Tab key comes to, given those at the top and the bottom of the view. */
    tabStop: (top: number, bottom: number) => (hasFocus || (place >= top && place <= bottom) ? place : top),
    /** What the list listens to. @param inView - rows that are in view at once */
    hands: (inView: number) => ({
      onFocus({ target }: FocusEvent) {
        const at = placeOfElement(target);
        if (at !== null) setHeld({ place: at, hasFocus: true });
      },
      onBlur({ target, currentTarget, relatedTarget }: FocusEvent) {
        // A window that is left keeps its focus for later.
        if (currentTarget.contains(relatedTarget) || document.activeElement === target) return;
        setHeld({ place, hasFocus: false });
      },
      onKeyDown(event: KeyboardEvent) {
        const next = hasModifier(event) ? null : placeAfter(event.key, place, inView, count);
        if (next === null) return;
        event.preventDefault();
        want({ place: next, isShown: true });
      },
    }),
  };
}
