import { useEffect, useState } from "react";
import { flushSync } from "react-dom";

/** Whether the page is being printed: what is drawn then is on the paper. */
export function useIsPrinting(): boolean {
  const [isPrinting, setIsPrinting] = useState(false);
  useEffect(() => {
    // The browser lays the paper out as soon as it has told of it.
    const begin = () => flushSync(() => setIsPrinting(true));
    const end = () => setIsPrinting(false);
    addEventListener("beforeprint", begin);
    addEventListener("afterprint", end);
    return () => {
      removeEventListener("beforeprint", begin);
      removeEventListener("afterprint", end);
    };
  }, []);
  return isPrinting;
}
