import { useSyncExternalStore } from "react";
import type { Store } from "./store";

/** Redraws with every change of a store. */
export function useStore<Kind extends Store>(store: Kind): Kind {
  const version = () => store.version;
  useSyncExternalStore(store.subscribe, version, version);
  return store;
}
