import { useCallback, useMemo, useSyncExternalStore } from "react";
import type { Graduations, Milliseconds } from "../../lock/dial";
import type { Chance } from "../../statistics/chance";
import type { Store } from "../shell/store";
import { ZeroingSession, type ZeroingSetup } from "./zeroingSession";

/** Redraws with every change of a store. */
export function useStore<Kind extends Store>(store: Kind): Kind {
  useSyncExternalStore(store.subscribe, () => store.version);
  return store;
}

/** A zeroing exercise for the life of a screen. */
export function useZeroing(setup: ZeroingSetup, chance: Chance): ZeroingSession {
  return useStore(useMemo(() => new ZeroingSession(setup, chance), [setup, chance]));
}

/** A turn of a store's dial that keeps its identity. */
export function useTurn(store: { turnBy(by: Graduations, now: Milliseconds): void }) {
  return useCallback((by: Graduations, now: Milliseconds) => store.turnBy(by, now), [store]);
}
