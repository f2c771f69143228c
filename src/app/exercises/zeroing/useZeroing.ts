import { useCallback, useEffect, useMemo, useRef, useSyncExternalStore } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import type { Chance } from "../../../statistics/chance";
import { DialSound } from "../../hand/dial/dialSound";
import type { Store } from "../../parts/page/store";
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

/** Plays the dial's clicks and the tune of every reading while sounds are on. */
export function useZeroingSound(session: ZeroingSession, isOn: boolean): void {
  const sound = useRef<DialSound | null>(null);
  const { last, asked } = session;
  const { dial } = session.lock;
  const told = useRef(last);
  useEffect(() => {
    if (isOn) {
      sound.current ??= new DialSound();
      sound.current.turned(dial);
    }
  }, [dial, isOn]);
  useEffect(() => {
    const isNews = last !== null && last !== told.current;
    told.current = last;
    if (!isOn || !isNews) return;
    if (last.refusal !== null) sound.current?.readingTold("refused");
    else sound.current?.readingTold(last.side === asked ? "accepted" : "closed");
  }, [last, asked, isOn]);
}
