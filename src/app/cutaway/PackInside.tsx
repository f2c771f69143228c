import { useMemo } from "react";
import type { Attempt } from "../../dialing/attempt";
import { CutawayFrame } from "./CutawayFrame";
import { cutawayView } from "./cutawayView";
import { leverSentences, wheelSentence } from "./cutawayWords";
import { PackLabels } from "./PackLabels";
import { PackPicture } from "./PackPicture";
import { packScene } from "./wheelGeometry";

/** The wheel pack seen from the dial, drawn out along its spindle, with its fence, lever and bolt. */
export function PackInside({ attempt }: { attempt: Attempt; version: number }) {
  const view = cutawayView(attempt);
  const count = view.wheels.length;
  const scene = useMemo(() => packScene(count), [count]);
  return (
    <CutawayFrame>
      <div className="cutaway-picture" data-columns={columnsKind(count)}>
        <PackPicture view={view} scene={scene} />
        <PackLabels view={view} scene={scene} />
      </div>
      <ul className="visually-hidden">
        {view.wheels.map((wheel) => (
          <li key={wheel.wheel}>{wheelSentence(wheel, view.numbersIncrease)}</li>
        ))}
        {leverSentences(view).map(({ part, text }) => (
          <li key={part}>{text}</li>
        ))}
      </ul>
    </CutawayFrame>
  );
}

/** How much room a label has beside its neighbors. */
function columnsKind(count: number): "wide" | "narrow" | "narrowest" {
  if (count <= 3) return "wide";
  return count === 4 ? "narrow" : "narrowest";
}
