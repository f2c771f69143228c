import { useState } from "react";
import { gapFromSide, largestAngle, parallaxError } from "../../../../fitting/geometry/parallax";
import { FITTING } from "../../../../fitting/trainingValues";
import { Button } from "../../../parts/controls/Button";
import { NumberField } from "../../../parts/controls/NumberField";
import { signedText } from "../../../parts/signedText";

const { eyesAt_deg, sideReadsTo, sideHand_mm, sideLimit } = FITTING;

interface LookFromSideProps {
  readonly gap_mm: number;
  readonly radius_mm: number;
  readonly perTurn: number;
  /** Hears that somebody looked from beside the axis. */
  readonly onLooked: () => void;
}

const eyeText = (angle: number) =>
  angle === 0 ? "Straight on" : `${Math.abs(angle)}° from the ${angle < 0 ? "left" : "right"}`;

/** Units of the drawing for a graduation, and its middle. */
const WIDE = 120;
const MIDDLE = 240;

/** The marks of the dial behind the index, as the eye sees them from where it is. */
function Loupe({ error }: { readonly error: number }) {
  return (
    <svg viewBox="0 0 480 92" aria-hidden="true" className="w-full max-w-[480px]">
      {[-2, -1, 0, 1, 2].map((mark) => {
        const x = MIDDLE + WIDE * (mark - error);
        return <path key={mark} className="stroke-ink" strokeWidth={2} d={`M${x} 88V${mark === 0 ? 44 : 58}`} />;
      })}
      <path className="stroke-accent" strokeWidth={3} d={`M${MIDDLE} 6V44`} />
    </svg>
  );
}

/** The same index read from five places: what an eye off the axis reads wrong, what gap that tells, and how to avoid it. */
export function LookFromSide({ gap_mm, radius_mm, perTurn, onLooked }: LookFromSideProps) {
  const [angle, setAngle] = useState(0);
  const [own_mm, setOwn] = useState(0);
  const [isJudged, setJudged] = useState(false);
  const seen = (from: number) =>
    Math.round(parallaxError(gap_mm, from, radius_mm, perTurn) / sideReadsTo) * sideReadsTo + 0;
  const side = eyesAt_deg.at(-1) ?? eyesAt_deg[0];
  const found_mm = gapFromSide(seen(side), side, radius_mm, perTurn);
  const within_mm = gapFromSide(sideReadsTo, side, radius_mm, perTurn) + sideHand_mm;
  const agrees = Math.abs(own_mm - found_mm) <= within_mm;
  return (
    <div className="stack">
      <fieldset className="row gap-2" aria-label="Where the eye is">
        {eyesAt_deg.map((one) => (
          <Button
            key={one}
            className="slim"
            aria-pressed={one === angle}
            onClick={() => {
              setAngle(one);
              if (one !== 0) onLooked();
            }}
          >
            {eyeText(one)}
          </Button>
        ))}
      </fieldset>
      <Loupe error={seen(angle)} />
      <p role="status" className="text-small">
        {angle === 0
          ? "Straight on, the gap makes no error. Read from here."
          : `${eyeText(angle)}, the index reads ${signedText(seen(angle), 2)} graduations compared with straight on.`}
      </p>
      <p className="text-small text-soft">
        The gap is (reading from the side) × {((2 * Math.PI * radius_mm) / perTurn).toFixed(2)} mm ÷ tan(angle); tan{" "}
        {side}° is {Math.tan((side * Math.PI) / 180).toFixed(3)}.
      </p>
      <div className="row text-small">
        <NumberField
          label="The gap by your readings, mm"
          value={own_mm}
          onNumber={(typed = 0) => {
            setJudged(false);
            setOwn(typed);
          }}
          size={6}
        />
        <Button className="slim" onClick={() => setJudged(true)}>
          Judge my gap
        </Button>
      </div>
      {isJudged && (
        <p role="status" className="text-small">
          <strong>
            {agrees ? "Your gap agrees with the readings." : "Your gap does not agree with the readings."}
          </strong>{" "}
          The readings give {found_mm.toFixed(2)} mm, within {within_mm.toFixed(2)} mm.{" "}
          {gap_mm > 0 &&
            `With the gap as it is, an eye more than ${largestAngle(gap_mm, sideLimit, radius_mm, perTurn).toFixed(0)}° off the axis reads more than ${sideLimit} graduations wrong.`}
        </p>
      )}
    </div>
  );
}
