import type { Attempt } from "../../dialing/attempt";
import "./cutaway.css";
import { EncoderInside } from "./EncoderInside";
import { PackInside } from "./PackInside";

/**
 * The inside of the lock under the hand.
 *
 * An attempt changes in place, so React cannot see that it has: a new `version` is what makes it look again.
 */
export function Cutaway({ attempt, version }: { attempt: Attempt; version: number }) {
  const Inside = attempt.pack === null ? EncoderInside : PackInside;
  return <Inside attempt={attempt} version={version} />;
}
