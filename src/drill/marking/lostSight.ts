import { type DoubtedRecord, isDoubted } from "../../realdial/sources/dialDoubt";
import type { LostSightRule } from "../sheet/lostSightRule";
import type { Station } from "../sheet/sheet";

/** So often one try is begun again at most: a device that loses the hand more often is not fit for a sitting. */
export const MOST_BEGUN_AGAIN = 2;

/** The rule of a station for turns in doubt. */
export const lostSightRule = (station: Station): LostSightRule =>
  "lostSight" in station ? (station.lostSight ?? "counts") : "counts";

/** Whether a try may count as right at its station for all that is doubtful of its turns. One begun again is without doubt. */
export const isDoubtAdmitted = (one: DoubtedRecord, station: Station): boolean =>
  !isDoubted(one) || lostSightRule(station) === "counts";

/** Whether a try whose turns have just come to be in doubt is broken off, to be begun again. @param begunAgain - so far */
export const isBegunAgain = (station: Station, begunAgain: number): boolean =>
  lostSightRule(station) === "try-again" && begunAgain < MOST_BEGUN_AGAIN;
