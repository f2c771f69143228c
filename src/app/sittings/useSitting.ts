import { useEffect, useState, useSyncExternalStore } from "react";
import type { Milliseconds } from "../../lock/dial";
import type { Store } from "../parts/page/store";
import { pageTime } from "./steadyTime";

/** Redraws with every change of a store. */
export function useStore<Kind extends Store>(store: Kind): Kind {
  useSyncExternalStore(store.subscribe, () => store.version);
  return store;
}

/** How often a resting hand is looked at, milliseconds. */
const REST_WATCH: Milliseconds = 200;

/** Lets time pass over a resting hand. */
export function useRest(rest: (at: Milliseconds, now: Milliseconds) => void): void {
  useEffect(() => {
    const timer = setInterval(() => rest(performance.now(), pageTime.now()), REST_WATCH);
    return () => clearInterval(timer);
  }, [rest]);
}

/** The time that sittings go by, looked at twice a second. */
export function useNow(): Milliseconds {
  const [now, setNow] = useState(() => pageTime.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(pageTime.now()), 500);
    return () => clearInterval(timer);
  }, []);
  return now;
}
