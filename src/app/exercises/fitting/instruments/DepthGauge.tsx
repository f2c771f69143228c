import { useState } from "react";
import { agreesWithGauge, type DepthReading } from "../../../../fitting/instruments/depthGauge";
import { Button } from "../../../parts/controls/Button";
import { NumberField } from "../../../parts/controls/NumberField";
import { VernierScale } from "./VernierScale";

interface DepthGaugeProps {
  readonly set: DepthReading;
  /** Hears that it was read as it shows. */
  readonly onRead: () => void;
}

/** A depth gauge on the cam, set over the spindle's end: whoever reads it says how far the spindle stands out. */
export function DepthGauge({ set, onRead }: DepthGaugeProps) {
  const [own_mm, setOwn] = useState<number | undefined>(undefined);
  const [isWrong, setWrong] = useState(false);
  return (
    <section className="stack" aria-label="Depth gauge">
      <p className="text-small">
        The gauge stands on a block of {set.block_mm} mm on the cam's face. Its rod is on the spindle's end. Subtract
        the reading of the scale from {set.block_mm} mm: that is how far the spindle is out of the cam. Below 0, it ends
        inside the cam.
      </p>
      <VernierScale {...set} />
      <div className="row gap-2 text-small">
        <NumberField
          label="Out of the cam, mm (inside is minus)"
          value={own_mm ?? Number.NaN}
          onNumber={(typed) => {
            setOwn(typed);
            setWrong(false);
          }}
          size={6}
        />
        <Button
          className="slim"
          disabled={own_mm === undefined}
          onClick={() => {
            if (own_mm !== undefined && agreesWithGauge(own_mm, set)) onRead();
            else setWrong(true);
          }}
        >
          Enter this reading
        </Button>
      </div>
      <p className="text-small" aria-live="polite">
        {isWrong &&
          "The gauge does not show this. Read the whole millimeters at the vernier's 0, and the tenths where two lines meet. Then subtract that from the height of the block."}
      </p>
    </section>
  );
}
