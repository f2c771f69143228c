import { useEffect, useState } from "react";
import type { Milliseconds } from "../../../lock/dial";

/** A hand that has not typed for this long is asking, milliseconds. */
const SETTLED_AFTER: Milliseconds = 200;

/** A text that is being typed, once it has stood for a moment: no search for every letter. */
export function useSettled(typed: string): string {
  const [settled, setSettled] = useState(typed);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(typed), SETTLED_AFTER);
    return () => clearTimeout(timer);
  }, [typed]);
  return settled;
}
