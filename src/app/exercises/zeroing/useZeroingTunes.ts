import { useSelector } from "@xstate/react";
import { useEffect, useRef } from "react";
import { dialSound } from "../../hand/dial/dialSound";
import { memoryOf } from "../../parts/page/ofChart";
import { useSound } from "../../parts/page/useSound";
import type { ZeroingSession } from "./session/zeroingSession";

/** Plays the tune of every reading while sounds are on. */
export function useZeroingTunes({ chart, asked }: ZeroingSession): void {
  const { last } = useSelector(chart, memoryOf);
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
