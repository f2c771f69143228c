import { DIAL_WEIGHTS, type DialWeight } from "../../../dialing/hand/dialFeel";
import { WEIGHT_LABELS } from "../../hand/WeightChoice";
import { Check } from "../../parts/controls/Check";
import { Dialog } from "../../parts/controls/Dialog";
import { Lines } from "../../parts/Lines";
import { FilesGoneLine } from "../../parts/page/FilesGoneLine";
import { fetchedLater } from "../../parts/page/fetchedLater";

const DevicePanel = fetchedLater(
  async () => (await import("../../hand/sources/devices/panel/DevicePanel")).DevicePanel,
  null,
  FilesGoneLine,
);

interface MoreSheetProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly dial: DialWeight;
  readonly onDial: (dial: DialWeight) => void;
  readonly asksEstimate: boolean;
  readonly onAsksEstimate: (asks: boolean) => void;
  /** What keys and mouse do, a sentence each. */
  readonly keys: readonly string[];
}

/** What is changed less often: how the dial turns, whether an own estimate comes before the result; and the keys. */
export function MoreSheet({ isOpen, onClose, dial, onDial, asksEstimate, onAsksEstimate, keys }: MoreSheetProps) {
  return (
    <Dialog title="More settings" isOpen={isOpen} onClose={onClose}>
      <fieldset>
        <legend>Dial</legend>
        {DIAL_WEIGHTS.map((weight) => (
          <label key={weight} className="check">
            <input type="radio" name="weight" checked={dial === weight} onChange={() => onDial(weight)} />
            {WEIGHT_LABELS[weight]}
          </label>
        ))}
      </fieldset>
      <p className="text-soft">
        If you change the dial, the attempt starts again. The weights are training values, not measured on a lock.
      </p>
      <fieldset>
        <legend>Own estimate</legend>
        <Check isOn={asksEstimate} onSwitch={onAsksEstimate}>
          Ask me how far off I was before the result is shown
        </Check>
      </fieldset>
      <p className="text-soft">
        You are asked with the help Counts or Silent. With Full help you see every stop as you make it. Cutaway, chart
        and result stay hidden until you answer.
      </p>
      <h2 className="mt-6 mb-3">A dial in your hand</h2>
      <p className="text-soft">
        Turn a real dial instead of the one on the screen. It stays connected until you close or reload the app.
      </p>
      <DevicePanel />
      <h2 className="mt-6 mb-3">Keys and mouse wheel</h2>
      <Lines className="text-soft" of={keys} />
    </Dialog>
  );
}
