import type { SightReason } from "../../../../../realdial/motion/sighting";
import type { ShownDial } from "../../../../../realdial/printed/shownDial";
import type { Problem } from "../../../../../wording/problem";
import { deviceProblem } from "../deviceWords";

/** Corners of the sheet in the order of its markers. */
const CORNERS = ["upper left", "upper right", "lower right", "lower left"] as const;

/** The first corner that is not seen. */
const coveredCorner = (shown: ShownDial | null) => CORNERS.find((_, k) => shown?.markers[k]?.isSeen === false);

/** Why a dial is not seen. */
export function sightProblem(reason: SightReason, shown: ShownDial | null): Problem {
  const corner = coveredCorner(shown);
  if (reason === "markers-covered" && corner !== undefined) return deviceProblem("corner-covered", [], { corner });
  return deviceProblem(reason === "none" ? "disc-lost" : reason, []);
}

/** A corner that is not seen though the dial is; null where all is well. */
export function sightHint(shown: ShownDial | null): Problem | null {
  const corner = coveredCorner(shown);
  return corner === undefined ? null : deviceProblem("corner-unseen", [], { corner });
}
