import { useEffect } from "react";
import type { Help } from "../../dialing/advice";
import { useRemembered } from "../parts/storage/remembered";
import { type HubStrength, hubStrength, OPENINGS, oneMoreOpening, READING_WISHES } from "./hubReading";

/**
 * Digits in the hub: none; always, where dialing is not the lesson; fading with the openings made, with or without a switch
 * to call them back.
 */
export type Digits = "none" | "always" | "fading" | "fading-without-switch";

/** The reading in the hub, and the switch for it. */
export interface DigitsNow {
  readonly strength: HubStrength;
  /** Shows a reading that is pale or gone; hides one that is there. Null where there is no switch. */
  readonly toggle: (() => void) | null;
}

/** How the reading stands in the hub, by the openings made and by what one asked for. */
export function useDigits(digits: Digits): DigitsNow {
  const [openings] = useRemembered("openings", OPENINGS);
  const [wish, setWish] = useRemembered("reading", READING_WISHES);
  if (digits === "none") return { strength: "hidden", toggle: null };
  if (digits === "always") return { strength: "shown", toggle: null };
  const strength = hubStrength(Number(openings), wish);
  const toggle = () => setWish(strength === "shown" ? "hidden" : "shown");
  return { strength, toggle: digits === "fading" ? toggle : null };
}

/** Counts every opening made with full help, by the help in which it came: the digits fade with each. */
export function useCountedOpening(opening: object | null, help: Help): void {
  const [openings, setOpenings] = useRemembered("openings", OPENINGS);
  // biome-ignore lint/correctness/useExhaustiveDependencies: one opening is counted once, with the help it came in
  useEffect(() => {
    if (opening !== null && help === "full") setOpenings(oneMoreOpening(openings));
  }, [opening]);
}
