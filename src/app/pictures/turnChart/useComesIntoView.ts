import { type RefObject, useEffect, useRef } from "react";
import { wantsLessMotion } from "../../parts/page/lessMotion";

/**
 * Brings a part of the page into view when something begins in it: a replay that starts below the fold would play unseen.
 *
 * @returns the ref of the part
 */
export function useComesIntoView(isOn: boolean): RefObject<HTMLElement | null> {
  const part = useRef<HTMLElement | null>(null);
  useEffect(() => {
    if (isOn) part.current?.scrollIntoView({ block: "nearest", behavior: wantsLessMotion() ? "instant" : "smooth" });
  }, [isOn]);
  return part;
}
