import { type RefObject, useEffect, useState } from "react";

/** A size on the screen, CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element as it changes, whole pixels; null until it has been measured. */
export function useSize(element: RefObject<HTMLElement | null>): Size | null {
  const [size, setSize] = useState<Size | null>(null);
  useEffect(() => {
    const { current } = element;
    if (current === null) return;
    const measure = () => {
      const { clientWidth: width, clientHeight: height } = current;
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    };
    // It tells the first size too, once the browser has laid the page out anyway: asked at once, it would have to do so on the spot.
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
