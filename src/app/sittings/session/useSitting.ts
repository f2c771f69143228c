import { useEffect, useState } from "react";
import type { Milliseconds } from "../../../lock/dial";
import { pageTime } from "./steadyTime";

/** The time that sittings go by, looked at twice a second. */
export function useNow(): Milliseconds {
  const [now, setNow] = useState(() => pageTime.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(pageTime.now()), 500);
    return () => clearInterval(timer);
  }, []);
  return now;
}
