import { useEffect, useRef } from "react";
import type { Graduations } from "../../../lock/dial";
import { DialSound } from "./dialSound";

/** Clicks as the dial passes its graduations, while sounds are on. */
export function useDialClicks(dial: Graduations, isOn: boolean): void {
  const sound = useRef<DialSound | null>(null);
  useEffect(() => {
    if (!isOn) return;
    sound.current ??= new DialSound();
    sound.current.turned(dial);
  }, [dial, isOn]);
}
