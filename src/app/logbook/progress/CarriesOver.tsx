import { useMemo } from "react";
import { type HandFigures, handsCompared } from "../../../progress/stops/handsCompared";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { signedText } from "../../parts/signedText";
import { TextTable } from "../../parts/TextTable";
import { doubtedSentence } from "../../results/doubtWords";
import { HAND_NAMES } from "../../results/sourceWords";

const percent = (share: number) => `${Math.round(100 * share)} %`;

function rowOf({ hand, openings, worstStopMore }: HandFigures): string[] {
  const { opened, trials, interval } = openings;
  return [
    HAND_NAMES[hand],
    `${opened} of ${trials} (true rate ${percent(interval.low)} to ${percent(interval.high)})`,
    worstStopMore === null
      ? "–"
      : `${signedText(worstStopMore.difference)} (${signedText(worstStopMore.low)} to ${signedText(worstStopMore.high)})`,
  ];
}

/** Whether what was learned on the screen carries over to one hand, a sentence. */
function sentenceOf({ hand, isCoarse, worstStopMore }: HandFigures): string {
  const name = HAND_NAMES[hand];
  if (isCoarse) return `${name}: its steps are too coarse to judge a stop. Use it for count and order.`;
  if (worstStopMore === null)
    return `${name}: too few attempts to compare. You need two with stops there, and two on the screen.`;
  const { low, high } = worstStopMore;
  if (low > 0) return `${name}: your worst stop is larger than on the screen. Practice there too.`;
  if (high < 0) return `${name}: your worst stop is smaller than on the screen.`;
  return `${name}: no difference from the screen is shown so far.`;
}

/** The screen and the dials in the hand beside each other. */
export function CarriesOver({ attempts }: { readonly attempts: readonly AttemptRecord[] }) {
  const hands = useMemo(() => handsCompared(attempts), [attempts]);
  return (
    <section aria-label="Does it carry over?" className="stack gap-3">
      <h2>Does it carry over?</h2>
      {hands
        .filter(({ hand }) => hand !== "screen")
        .map((one) => (
          <p key={one.hand}>{sentenceOf(one)}</p>
        ))}
      <p className="empty:hidden">{doubtedSentence(attempts)}</p>
      <TextTable
        caption="Each hand beside the screen, this lock and exercise"
        head={["turned by", "opened the first time", "worst stop more than on the screen, graduations"]}
        rows={hands.map(rowOf)}
      />
      <p className="text-soft">Intervals of 95 %: Wilson for openings, Welch for the worst stop.</p>
    </section>
  );
}
