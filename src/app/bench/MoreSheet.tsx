import type { DialWeight } from "../../dialing/dialFeel";
import { Sheet } from "../shell/Sheet";

const WEIGHTS: readonly { readonly weight: DialWeight; readonly label: string }[] = [
  { weight: "usual", label: "Usual: it goes where your hand goes" },
  { weight: "heavy", label: "Heavy: it sticks, then follows behind your hand" },
  { weight: "light", label: "Light: it runs on after your hand stops" },
];

interface MoreSheetProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  readonly dial: DialWeight;
  readonly onDial: (dial: DialWeight) => void;
  readonly asksEstimate: boolean;
  readonly onAsksEstimate: (asks: boolean) => void;
}

/** What is set more seldom: how the dial turns, and whether an own estimate comes before the result. */
export function MoreSheet({ isOpen, onClose, dial, onDial, asksEstimate, onAsksEstimate }: MoreSheetProps) {
  return (
    <Sheet title="More settings" isOpen={isOpen} onClose={onClose}>
      <fieldset>
        <legend>Dial</legend>
        {WEIGHTS.map(({ weight, label }) => (
          <label key={weight} className="sheet-choice">
            <input type="radio" name="weight" checked={dial === weight} onChange={() => onDial(weight)} />
            {label}
          </label>
        ))}
      </fieldset>
      <p className="soft">Another dial begins the attempt again. How heavy and how light are training values.</p>
      <fieldset>
        <legend>Own estimate</legend>
        <label className="sheet-choice">
          <input
            type="checkbox"
            checked={asksEstimate}
            onChange={(event) => onAsksEstimate(event.currentTarget.checked)}
          />
          Ask me how far off I was before it is shown
        </label>
      </fieldset>
      <p className="soft">
        Asked with the help Counts or Silent; with Full help you see every stop as you make it. Until you have answered,
        cutaway, chart and result stay hidden.
      </p>
    </Sheet>
  );
}
