import { useEffect } from "react";
import type { Help } from "../../dialing/advice";
import { useRemembered } from "../parts/page/remembered";
import type { Outcome } from "../replay/outcome";
import { type HubStrength, hubStrength, OPENINGS, oneMoreOpening, READING_WISHES } from "./hubReading";

/** The reading in the hub, and the switch for it. */
export interface HubReading {
  readonly strength: HubStrength;
  /** Shows a reading that is pale or gone; hides one that is there. Null where the help rules it out. */
  readonly toggle: (() => void) | null;
}

/** Fades the hub's reading with every lock opened in full help, and remembers what one asked for. */
export function useHubReading(help: Help, outcome: Outcome | null): HubReading {
  const [openings, setOpenings] = useRemembered("openings", OPENINGS);
  const [wish, setWish] = useRemembered("reading", READING_WISHES);
  // biome-ignore lint/correctness/useExhaustiveDependencies: one outcome is counted once, with the help it ended in
  useEffect(() => {
    if (outcome?.opened === true && help === "full") setOpenings(oneMoreOpening(openings));
  }, [outcome]);
  const strength = hubStrength(help, Number(openings), wish);
  const toggle = () => setWish(strength === "shown" ? "hidden" : "shown");
  return { strength, toggle: help === "full" ? toggle : null };
}
