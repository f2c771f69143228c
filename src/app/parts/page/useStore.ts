import { useSyncExternalStore } from "react";
import type { Store } from "./store";

/** What is wanted of a store; redraws where that has become another. @param part - the same thing, where nothing changed */
export function useStored<Kind extends Store, Part>(store: Kind, part: (store: Kind) => Part): Part {
  const now = () => part(store);
  return useSyncExternalStore(store.subscribe, now, now);
}

/** Redraws with every change of a store. */
export function useStore<Kind extends Store>(store: Kind): Kind {
  const version = () => store.version;
  useSyncExternalStore(store.subscribe, version, version);
  return store;
}
