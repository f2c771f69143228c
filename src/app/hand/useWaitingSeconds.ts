import { useEffect, useState } from "react";
import type { EncoderMemory } from "../../lock/dialEncoder";

/** Seconds that an encoder lock still refuses every try; 0 where it does not wait. Redraws once a second. */
export function useWaitingSeconds({ waitsUntil_ms }: EncoderMemory): number {
  const [now, setNow] = useState(() => performance.now());
  useEffect(() => {
    if (waitsUntil_ms === null) return;
    setNow(performance.now());
    const timer = setInterval(() => setNow(performance.now()), 1000);
    return () => clearInterval(timer);
  }, [waitsUntil_ms]);
  return waitsUntil_ms === null ? 0 : Math.max(0, Math.ceil((waitsUntil_ms - now) / 1000));
}
