import { useState } from "react";
import { Button } from "../../../../parts/controls/Button";
import { Check } from "../../../../parts/controls/Check";
import { recallText, rememberText } from "../deviceMemory";
import { StepHead } from "./StepHead";

/** Whether motions were not to be kept, the last time it was asked. */
const KEPT_NONE = "dial-keeps-no-motion";

interface PracticeQuestionProps {
  readonly onAgree: (keepsMotion: boolean) => void;
  readonly onRefuse: () => void;
}

/** Asked each time before an ordinary dial is followed: a recording of a dial is its combination. */
export function PracticeQuestion({ onAgree, onRefuse }: PracticeQuestionProps) {
  const [keepsNone, setKeepsNone] = useState(recallText(KEPT_NONE) !== null);
  const agree = () => {
    rememberText(KEPT_NONE, keepsNone ? "yes" : null);
    onAgree(!keepsNone);
  };
  return (
    <fieldset className="plain stack max-w-[640px]">
      <legend>
        <StepHead number={1} title="Is this a practice lock whose combination may be recorded?" />
      </legend>
      <p className="mt-2">
        A recording of a dial is its combination: whoever has the motion can read the numbers from it.{" "}
        <strong>Never point the camera at a lock that guards anything.</strong>
      </p>
      <p>
        The app does not find combinations. It compares what you dial with the combination that you set on the bench.
        That combination stays in the record of each attempt, as always.
      </p>
      <div>
        <Check className="check" isOn={keepsNone} onSwitch={setKeepsNone}>
          Do not keep motions
        </Check>
        <p className="text-soft">
          An attempt then keeps its result, its stops and its faults, and its record says that no motion was kept.
          Nobody can replay it, and a class table leaves out its openings.
        </p>
      </div>
      <div className="row">
        <Button onClick={agree}>Yes, a practice lock: turn the camera on</Button>
        <Button onClick={onRefuse}>No: leave the camera off</Button>
      </div>
    </fieldset>
  );
}
