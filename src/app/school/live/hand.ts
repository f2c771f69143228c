import type { TextStore } from "../../parts/storage/pageStore";
import { storedText, storeText } from "../../parts/storage/pageStore";

/** Whether the hand of this bench is up, and what its person wants that the server has not taken yet. */
export interface HandState {
  readonly isUp: boolean;
  /** Null where server and person agree. */
  readonly wanted: "up" | "down" | null;
  /** Why it is as it is, where that is news: the instructor lowered it, or the server refused. */
  readonly news: "lowered-by-instructor" | "refused" | null;
}

const KEY = "gatefall.hand";
const DOWN: HandState = { isUp: false, wanted: null, news: null };

/** What was stored: "up", "down", and with a mark what is wanted and not yet taken. */
const STORED: ReadonlyMap<string, HandState> = new Map([
  ["up", { ...DOWN, isUp: true }],
  ["up?", { ...DOWN, wanted: "up" }],
  ["down?", { ...DOWN, isUp: true, wanted: "down" }],
]);

/** The hand as the page before this one left it. */
export const storedHand = (store?: TextStore): HandState => STORED.get(storedText(KEY, store) ?? "") ?? DOWN;

/** Stores the hand for the next page. */
export function storeHand({ isUp, wanted }: HandState, store?: TextStore): void {
  storeText(KEY, wanted === null ? (isUp ? "up" : null) : `${wanted}?`, store);
}

/** The person raises or lowers it. */
export const wanting = ({ isUp }: HandState, wanted: "up" | "down"): HandState => ({ isUp, wanted, news: null });

/** The server says whether it is up. What is wanted stays wanted until the server has it so. */
export function toldHand({ isUp, wanted }: HandState, isRaised: boolean): HandState {
  if (wanted !== null && isRaised !== (wanted === "up")) return { isUp: isRaised, wanted, news: null };
  const isLowered = wanted === null && isUp && !isRaised;
  return { isUp: isRaised, wanted: null, news: isLowered ? "lowered-by-instructor" : null };
}

/** The server refused what was wanted. */
export const refusedHand = (hand: HandState): HandState =>
  hand.wanted === null ? hand : { isUp: hand.isUp, wanted: null, news: "refused" };

/** What is to be said of the hand, a sentence; empty where there is nothing to say. */
export function handWords({ isUp, wanted, news }: HandState, isLive: boolean): string {
  if (wanted === "up") {
    return isLive
      ? "Your hand is going up."
      : "No connection to your class now. Your hand goes up as soon as there is one.";
  }
  if (wanted === "down" && !isLive)
    return "No connection to your class now. Your hand goes down as soon as there is one.";
  if (isUp) return "Your hand is up. Your instructor sees it.";
  if (news === "lowered-by-instructor") return "Your instructor has lowered your hand.";
  return news === "refused" ? "Your class did not take your hand. Ask your instructor in person." : "";
}
