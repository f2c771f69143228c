import type { Attempt } from "../../../dialing/attempt";
import "./cutaway.css";
import type { Figures } from "./cutawayWords";
import { EncoderInside } from "./EncoderInside";
import { PackInside } from "./PackInside";

interface CutawayProps {
  readonly attempt: Attempt;
  readonly version: number;
  readonly figures?: Figures;
}

/**
 * The inside of the lock under the hand.
 *
 * An attempt changes in place, so React cannot see that it has: a new `version` is what makes it look again.
 */
export function Cutaway({ attempt, version, figures = "all" }: CutawayProps) {
  const Inside = attempt.pack === null ? EncoderInside : PackInside;
  return <Inside attempt={attempt} version={version} figures={figures} />;
}
