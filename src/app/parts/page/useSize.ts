import { type RefObject, useLayoutEffect, useState } from "react";

/** A size on the screen, CSS pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The size of an element as it changes, whole pixels; null until it has been measured. */
export function useSize(element: RefObject<HTMLElement | null>): Size | null {
  const [size, setSize] = useState<Size | null>(null);
  useLayoutEffect(() => {
    const { current } = element;
    if (current === null) return;
    const measure = () => {
      const { clientWidth: width, clientHeight: height } = current;
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(current);
    return () => observer.disconnect();
  }, [element]);
  return size;
}
