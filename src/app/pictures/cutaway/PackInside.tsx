import { useMemo } from "react";
import { WordLink } from "../../words/WordLink";
import { CutawayFrame } from "./CutawayFrame";
import { type CutawayKey, type CutawayLock, cutawayView } from "./cutawayView";
import { type Figures, keySentence, leverSentences, wheelSentence } from "./cutawayWords";
import { PackLabels } from "./PackLabels";
import { PackPicture } from "./PackPicture";
import { packScene } from "./packScene";

const PACK_WORDS = (
  <>
    <WordLink word="gate">gate</WordLink>
    <WordLink word="fence">fence</WordLink>
  </>
);

interface PackInsideProps {
  /** Changes in place: a new `version` is what makes React look again. */
  readonly attempt: CutawayLock;
  readonly version: number;
  /** The change key and its holes, where the lock is being changed. */
  readonly changeKey?: CutawayKey | null;
  readonly figures?: Figures;
}

/** The wheel pack seen from the dial, drawn out along its spindle, with its fence, lever and bolt. */
export function PackInside({ attempt, changeKey = null, figures = "all" }: PackInsideProps) {
  const view = cutawayView(attempt);
  const count = view.wheels.length;
  const scene = useMemo(() => packScene(count), [count]);
  const sentences = [
    ...view.wheels.map((wheel) => wheelSentence(wheel, view.numbersIncrease, figures)),
    ...(changeKey === null ? [] : [keySentence(changeKey)]),
    ...leverSentences(view, figures),
  ];
  return (
    <CutawayFrame words={PACK_WORDS} columns={columnsKind(count)} sentences={sentences}>
      <PackPicture view={view} scene={scene} changeKey={changeKey} />
      <PackLabels view={view} scene={scene} figures={figures} />
    </CutawayFrame>
  );
}

/** How much room a label has beside its neighbors. */
function columnsKind(count: number): "wide" | "narrow" | "narrowest" {
  if (count <= 3) return "wide";
  return count === 4 ? "narrow" : "narrowest";
}
