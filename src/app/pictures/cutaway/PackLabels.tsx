import { type CSSProperties, useMemo } from "react";
import { CutawayLabel } from "./CutawayLabel";
import type { CutawayView } from "./cutawayView";
import { boltWords, camReadingWords, camStateWords, errorWords, type Figures, wheelStateWords } from "./cutawayWords";
import { columnWidths, isMirrored, type Scene } from "./packScene";

interface PackLabelsProps {
  readonly view: CutawayView;
  readonly scene: Scene;
  readonly figures: Figures;
}

/** The words under the parts, each under its part: the bolt, the cam, and the wheels back to wheel 1. */
export function PackLabels({ view, scene, figures }: PackLabelsProps) {
  const { cam, wheels, retraction, numbersIncrease } = view;
  const isDrawing = view.isNoseDown && retraction < 1;
  const hasLeft = isMirrored(view);
  const style = useMemo(
    (): CSSProperties => ({
      gridTemplateColumns: columnWidths(scene)
        .map((width) => `minmax(0, ${width}fr)`)
        .join(" "),
      direction: hasLeft ? "rtl" : "ltr",
    }),
    [scene, hasLeft],
  );
  return (
    <div className="cutaway-labels grid leading-[1.3] text-soft text-center" style={style} aria-hidden="true">
      <CutawayLabel name="bolt" first={boltWords(retraction)} />
      <CutawayLabel
        name="cam"
        first={camReadingWords(cam, figures)}
        second={camStateWords(view)}
        isMoving={cam.driving !== null || isDrawing}
      />
      {wheels.toReversed().map((wheel) => (
        <CutawayLabel
          key={wheel.wheel}
          name={`wheel ${wheel.wheel}`}
          tag={wheel.number}
          first={errorWords(wheel, numbersIncrease, figures)}
          second={wheelStateWords(wheel)}
          isMoving={wheel.driven !== null}
          isTrue={wheel.isTrue}
        />
      ))}
    </div>
  );
}
