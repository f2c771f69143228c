import { Button } from "../../parts/controls/Button";
import { handWords } from "./hand";
import type { LiveBench } from "./liveBench";

/** Raises a hand: the instructor sees it on the board of the class. What became of it is told in a line. */
export function HandPart({ live }: { readonly live: LiveBench }) {
  const { hand, isLive } = live;
  const isUp = (hand.wanted ?? (hand.isUp ? "up" : "down")) === "up";
  return (
    <>
      <Button className={isUp ? "slim primary" : "slim"} onClick={() => live.wantHand(isUp ? "down" : "up")}>
        {isUp ? "Lower your hand" : "Ask for help"}
      </Button>
      <p role="status">{handWords(hand, isLive)}</p>
    </>
  );
}
