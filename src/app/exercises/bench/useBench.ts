import { useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from "react";
import type { Milliseconds } from "../../../lock/dial";
import type { EncoderMemory } from "../../../lock/dialEncoder";
import { DialSound } from "../../hand/dial/dialSound";
import { useRunOn } from "../../hand/dial/useRunOn";
import type { BenchAddress } from "./benchAddress";
import { BenchSession } from "./benchSession";

/** How often a resting hand is looked at, milliseconds. */
const REST_WATCH: Milliseconds = 200;

/** A bench for the life of a screen, redrawn with every change of it. */
export function useBench(address: BenchAddress): BenchSession {
  const session = useMemo(() => new BenchSession(address.setup, address.chance), [address]);
  useSyncExternalStore(session.subscribe, () => session.version);
  useRunOn(
    session,
    useCallback((at) => session.runOn(at), [session]),
  );
  useEffect(() => {
    const timer = setInterval(() => session.rest(performance.now()), REST_WATCH);
    return () => clearInterval(timer);
  }, [session]);
  return session;
}

/** Plays the sounds of a bench while they are on. */
export function useBenchSound(session: BenchSession, isOn: boolean): void {
  const sound = useRef<DialSound | null>(null);
  useEffect(() => {
    if (!isOn) return;
    sound.current ??= new DialSound();
    const { current } = sound;
    let wasCoupled = false;
    return session.onFacts((facts, _by, dial) => {
      current.turned(dial);
      const isCoupled = session.lock.isCoupled;
      if (isCoupled && !wasCoupled) current.noseDropped();
      wasCoupled = isCoupled;
      current.heard(facts);
    });
  }, [session, isOn]);
}

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
