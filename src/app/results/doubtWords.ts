import { lostSightRule, MOST_BEGUN_AGAIN } from "../../drill/marking/lostSight";
import type { LostSightRule } from "../../drill/sheet/lostSightRule";
import type { Station } from "../../drill/sheet/sheet";
import { type DialDoubt, type DoubtedRecord, isDoubted } from "../../realdial/sources/dialDoubt";
import { countText } from "../../wording/amountWords";

/** Why turns are in doubt, within a sentence. */
const DOUBT_WORDS: Readonly<Record<DialDoubt, string>> = {
  "sight-lost": "the camera lost sight of the dial",
  gap: "nothing was heard of the device for a time",
  "steps-missed": "steps of the encoder were missed",
  restarted: "the board of the encoder restarted",
  hidden: "the page was in the background",
  disconnected: "the device was disconnected",
};

/** What marks an attempt, in a list. */
export const TURNS_IN_DOUBT = "turns in doubt";

/** Why the turns of a record are in doubt, a sentence or two; null where nothing speaks for that. */
export function doubtSentence(
  record: DoubtedRecord & { readonly isDoubtRefused?: boolean | undefined },
): string | null {
  if (!isDoubted(record)) return null;
  const why = (record.doubts ?? []).map((one) => DOUBT_WORDS[one]).join(", and ");
  const refused = record.isDoubtRefused === true ? " Its station counts no such try as right." : "";
  return `Turns in doubt: ${why}. The turns that were counted may not be those the hand made.${refused}`;
}

/** Why the turns of a handover are in doubt, for the client who gets its record; null where nothing speaks for that. */
export function doubtForClient(record: DoubtedRecord): string | null {
  if (!isDoubted(record)) return null;
  const why = (record.doubts ?? []).map((one) => DOUBT_WORDS[one]).join(", and ");
  return `${why}. A turn of the dial may have been counted wrong, so ask to see the proofs again.`;
}

/** How many of some attempts are marked, a sentence; null where none is. */
export function doubtedSentence(records: readonly DoubtedRecord[]): string | null {
  const marked = records.filter(isDoubted).length;
  if (marked === 0) return null;
  return `${countText(marked, "attempt is", "attempts are")} marked: a device lost the hand, so the turns are in doubt. ${marked === 1 ? "It counts" : "They count"} here all the same.`;
}

/** What a station does with a try whose turns are in doubt, for whoever sets it. */
export const LOST_SIGHT_WORDS: Readonly<Record<LostSightRule, string>> = {
  counts: "The try goes on and counts, marked",
  "try-again": "The try is broken off and begun again",
  fails: "The try does not count as right",
};

/** What each rule means, for whoever sets it. A hand is lost where a camera loses sight of the dial, or a cable is pulled. */
export const LOST_SIGHT_NOTES: Readonly<Record<LostSightRule, string>> = {
  counts:
    "A camera may lose sight of the dial, or a cable may be pulled. The result then says that the turns are in doubt.",
  "try-again": `A camera may lose sight of the dial, or a cable may be pulled. The trainee gets the same numbers from another start, at most ${countText(MOST_BEGUN_AGAIN, "time", "times")}.`,
  fails: "A camera may lose sight of the dial, or a cable may be pulled. The trainee makes no other try for it.",
};

const LOST_SIGHT_SENTENCES: Readonly<Record<Exclude<LostSightRule, "counts">, string>> = {
  "try-again": `If your device loses your hand in a try, the try is broken off and begun again, at most ${countText(MOST_BEGUN_AGAIN, "time", "times")}; after that it does not count as right. The record shows it.`,
  fails: "If your device loses your hand in a try, the try does not count as right. The record shows it.",
};

/** What comes of a lost hand at a station, where its sheet says it; null where the try just goes on. */
export function lostSightSentence(station: Station): string | null {
  const rule = lostSightRule(station);
  return rule === "counts" ? null : LOST_SIGHT_SENTENCES[rule];
}

/** How often a try was begun again, a few words; "" where never. */
export const begunAgainWords = (begunAgain = 0): string =>
  begunAgain === 0 ? "" : `begun again ${countText(begunAgain, "time", "times")}`;

/** Why a try begins anew, for whoever sits it. */
export const begunAgainSentence = (begunAgain: number): string =>
  `Your device lost your hand, so this try was broken off and begins again: ${begunAgain} of ${MOST_BEGUN_AGAIN} times. The record shows it.`;
