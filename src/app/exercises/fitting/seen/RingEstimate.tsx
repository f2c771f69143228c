import { useState } from "react";
import type { FitObservation } from "../../../../fitting/fitCheck";
import { agreesWithRule, layRule, RULE_STEP_mm, radiusBy } from "../../../../fitting/instruments/markRule";
import { type Offset, offsetOf } from "../../../../fitting/offCenter";
import { type JudgedOffset, judgeOffset } from "../../../../fitting/teaching/judgeOffset";
import { Button } from "../../../parts/controls/Button";
import { NumberField } from "../../../parts/controls/NumberField";
import { MarkRule } from "../instruments/MarkRule";

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

/** How large the circle of the marks is, by a rule: what turns graduations into millimeters. */
function RadiusEstimate({ radius_mm }: { readonly radius_mm: number }) {
  const [own_mm, setOwn] = useState<number | undefined>(undefined);
  const [isJudged, setJudged] = useState(false);
  const laid = layRule(radius_mm);
  return (
    <div className="stack">
      <p className="text-small">
        A rule lies across two opposite marks of the ring, over the middle of the dial. Read it at both: the radius is
        half of what lies between.
      </p>
      <MarkRule {...laid} />
      <div className="row text-small">
        <NumberField
          label="Radius of the marks, mm"
          value={own_mm ?? Number.NaN}
          onNumber={(typed) => {
            setOwn(typed);
            setJudged(false);
          }}
          size={6}
        />
        <Button className="slim" disabled={own_mm === undefined} onClick={() => setJudged(true)}>
          Judge my radius
        </Button>
      </div>
      {isJudged && own_mm !== undefined && (
        <p role="status" className="text-small">
          <strong>Your radius {agreesWithRule(own_mm, laid) ? "agrees" : "does not agree"} with the rule.</strong> It
          shows {size(radiusBy(laid))}, within {size(RULE_STEP_mm)}: its lines are {size(RULE_STEP_mm)} apart, and it is
          read twice.
        </p>
      )}
    </div>
  );
}

/** How far off center the ring is, and where to, by the trainee's own reckoning from a rule and the four marks; then it is judged. */
export function RingEstimate({ log, radius_mm, perTurn, tellsHow }: RingEstimateProps) {
  const [own, setOwn] = useState<Offset>({ x_mm: 0, y_mm: 0 });
  const [judged, setJudged] = useState<{ readonly of: number; readonly judged: JudgedOffset } | null>(null);
  const readings = log.flatMap((seen) => (seen.kind === "marks" ? seen.readings : []));
  if (readings.length === 0) return <p className="text-small">Read at four marks of the ring first.</p>;
  return (
    <div className="stack">
      <RadiusEstimate radius_mm={radius_mm} />
      {tellsHow && (
        <p className="text-small">
          To the right: half of top less bottom. Up: half of left less right. Each in graduations; one is 2π × the
          radius ÷ {perTurn} at the marks, 6.28 × the radius ÷ {perTurn}.
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
