import { useEffect, useRef } from "react";
import { dialSound } from "../../hand/dial/dialSound";
import { useSound } from "../../parts/page/useSound";
import type { ZeroingSession } from "./session/zeroingSession";

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
