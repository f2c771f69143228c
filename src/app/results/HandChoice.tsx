import { useId } from "react";
import type { Hand } from "../../realdial/sources/handOf";
import { Select } from "../parts/controls/Select";
import { HAND_NAMES } from "./sourceWords";

interface HandChoiceProps {
  /** All that were tried. */
  readonly hands: readonly Hand[];
  readonly hand: Hand;
  readonly onHand: (hand: Hand) => void;
}

/** Which hand the figures here are of, where more than one was tried. */
export function HandChoice({ hands, hand, onHand }: HandChoiceProps) {
  const id = useId();
  if (hands.length < 2) return null;
  return (
    <div className="logbook-filter row gap-x-4 gap-y-2 text-small">
      <span className="row">
        <label htmlFor={id}>Turned by</label>
        <Select id={id} value={hand} choices={hands.map((one) => [one, HAND_NAMES[one]] as const)} onChoice={onHand} />
      </span>
      <p className="text-soft">
        Only what was turned this way counts in the figures here. Jobs that turn no dial count with each.
      </p>
    </div>
  );
}
