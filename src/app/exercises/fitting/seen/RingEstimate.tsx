import { useState } from "react";
import type { FitObservation } from "../../../../fitting/fitCheck";
import { type Offset, offsetOf } from "../../../../fitting/offCenter";
import { type JudgedOffset, judgeOffset } from "../../../../fitting/teaching/judgeOffset";
import { Button } from "../../../parts/controls/Button";
import { NumberField } from "../../../parts/controls/NumberField";

interface RingEstimateProps {
  /** What checks showed since a part was last moved. */
  readonly log: readonly FitObservation[];
  readonly radius_mm: number;
  readonly perTurn: number;
  /** Full help tells how one reckons it. */
  readonly tellsHow: boolean;
}

const size = (mm: number) => `${Math.abs(mm).toFixed(2)} mm`;
const offsetText = ({ x_mm, y_mm }: Offset) =>
  `${size(x_mm)} to the ${x_mm < 0 ? "left" : "right"} and ${size(y_mm)} ${y_mm < 0 ? "down" : "up"}`;

const VERDICTS: Readonly<Record<JudgedOffset["verdict"], string>> = {
  agrees: "Your estimate agrees with the readings.",
  differs: "Your estimate does not agree with the readings.",
  "cannot-tell": "One round of readings cannot tell how far it is off itself. Read the four marks again.",
};

function Judged({ judged, readings }: { readonly judged: JudgedOffset; readonly readings: number }) {
  const { found, away_mm, verdict } = judged;
  const { x_mm, y_mm } = found.halfWidth;
  return (
    <p role="status" className="text-small">
      <strong>{VERDICTS[verdict]}</strong>{" "}
      {verdict !== "cannot-tell" && (
        <>
          Least squares of {readings} readings: {offsetText(found.offset)}, each within {size(Math.max(x_mm, y_mm))} (95
          % of such intervals hold the true place). Yours is {size(away_mm)} from it. The ring is{" "}
          {size(offsetOf(found.offset))} off in all.
        </>
      )}
    </p>
  );
}

/** How far off center the ring is, and where to, by the trainee's own reckoning from the four marks; then it is judged. */
export function RingEstimate({ log, radius_mm, perTurn, tellsHow }: RingEstimateProps) {
  const [own, setOwn] = useState<Offset>({ x_mm: 0, y_mm: 0 });
  const [judged, setJudged] = useState<{ readonly of: number; readonly judged: JudgedOffset } | null>(null);
  const readings = log.flatMap((seen) => (seen.kind === "marks" ? seen.readings : []));
  if (readings.length === 0) return <p className="text-small">Read at four marks of the ring first.</p>;
  const perGraduation = ((2 * Math.PI * radius_mm) / perTurn).toFixed(2);
  return (
    <div className="stack">
      {tellsHow && (
        <p className="text-small">
          To the right: half of top less bottom. Up: half of left less right. Each in graduations; one is{" "}
          {perGraduation} mm at the marks.
        </p>
      )}
      <div className="row text-small">
        <NumberField
          label="To the right, mm (left is minus)"
          value={own.x_mm}
          onNumber={(x_mm = 0) => setOwn({ ...own, x_mm })}
          size={6}
        />
        <NumberField
          label="Up, mm (down is minus)"
          value={own.y_mm}
          onNumber={(y_mm = 0) => setOwn({ ...own, y_mm })}
          size={6}
        />
        <Button
          className="slim"
          onClick={() => setJudged({ of: readings.length, judged: judgeOffset(own, readings, radius_mm, perTurn) })}
        >
          Judge my estimate
        </Button>
      </div>
      {judged?.of === readings.length && <Judged judged={judged.judged} readings={readings.length} />}
    </div>
  );
}
