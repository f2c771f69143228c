import { useState } from "react";
import { Button } from "../../../../parts/controls/Button";
import { Check } from "../../../../parts/controls/Check";
import { storedText, storeText } from "../../../../parts/storage/pageStore";

/** Whether motions were not to be kept, the last time it was asked. */
const KEPT_NONE = "dial-keeps-no-motion";

interface PracticeQuestionProps {
  readonly onAgree: (keepsMotion: boolean) => void;
  readonly onRefuse: () => void;
}

/** Asked each time before an ordinary dial is followed: a recording of a dial is its combination. */
export function PracticeQuestion({ onAgree, onRefuse }: PracticeQuestionProps) {
  const [keepsNone, setKeepsNone] = useState(storedText(KEPT_NONE) !== null);
  const agree = () => {
    storeText(KEPT_NONE, keepsNone ? "yes" : null);
    onAgree(!keepsNone);
  };
  return (
    <fieldset className="mt-2">
      <legend className="font-semibold">Is this a practice lock whose combination may be recorded?</legend>
      <p className="mt-2">
        A recording of a dial is its combination: whoever has the motion can read the numbers from it. Never point the
        camera at a lock that guards anything.
      </p>
      <p className="mt-2">
        The app does not find combinations. It follows your dial and compares it with the combination that you set on
        the bench, which stays in the record of each attempt, as always.
      </p>
      <Check className="check mt-2" isOn={keepsNone} onSwitch={setKeepsNone}>
        Do not keep motions
      </Check>
      <p className="text-soft">
        Without motions, an attempt keeps its result, its stops and its faults. It cannot be replayed, and its record
        says that no motion was kept. Checks call it not replayed, and a class list leaves out its openings.
      </p>
      <div className="row mt-2">
        <Button onClick={agree}>Yes, a practice lock: turn the camera on</Button>
        <Button onClick={onRefuse}>No: leave the camera off</Button>
      </div>
    </fieldset>
  );
}
