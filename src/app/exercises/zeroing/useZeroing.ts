import { useEffect, useMemo, useRef } from "react";
import type { Chance } from "../../../statistics/chance";
import { dialSound } from "../../hand/dial/dialSound";
import { useHandStore } from "../../hand/useHandStore";
import { useSound } from "../../parts/page/useSound";
import { ZeroingSession, type ZeroingSetup } from "./zeroingSession";

/** A zeroing exercise for the life of a screen. */
export function useZeroing(setup: ZeroingSetup, chance: Chance): ZeroingSession {
  return useHandStore(useMemo(() => new ZeroingSession(setup, chance), [setup, chance]));
}

/** Plays the tune of every reading while sounds are on. */
export function useZeroingTunes({ last, asked }: ZeroingSession): void {
  const { isOn } = useSound();
  const told = useRef(last);
  useEffect(() => {
    const isNews = last !== null && last !== told.current;
    told.current = last;
    if (!isOn || !isNews) return;
    if (last.refusal !== null) dialSound.readingTold("refused");
    else dialSound.readingTold(last.side === asked ? "accepted" : "closed");
  }, [last, asked, isOn]);
}
