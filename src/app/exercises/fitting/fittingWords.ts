import type { FitStage } from "../../../fitting/fitStage";

/** How far the lock is together. */
export const STAGE_WORDS: Readonly<Record<FitStage, string>> = {
  apart: "Parts are still in the tray. The checks come once body, ring, dial and key are on the door.",
  coupled: "Dial and cam are coupled. The cover is off.",
  closed: "The lock is together and the cover is on.",
  spent: "These parts cannot become a good lock any more.",
};
