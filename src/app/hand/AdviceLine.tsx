import type { Advice } from "../../dialing/advice";
import { Button } from "../parts/controls/Button";
import "./hand.css";

/** How an attempt ended. */
export type Verdict = "opened" | "failed";

interface AdviceLineProps {
  readonly advice: Advice | null;
  /** What takes the advice's place, or null. */
  readonly note: string | null;
  /** The way out of a replay; null while the lock is live. */
  readonly onLeave: (() => void) | null;
  /** How the attempt ended, shown as a sign before the sentence; left out while it is under way. */
  readonly verdict?: Verdict | null;
}

/** One sentence to act on and one of detail, above the dial. It keeps its height when it has nothing to say. */
export function AdviceLine({ advice, note, onLeave, verdict = null }: AdviceLineProps) {
  const say = note ?? advice?.say ?? "";
  return (
    <div className="advice" data-verdict={verdict}>
      <p className="advice-say text-title leading-[1.3] phone:text-lead">{say}</p>
      {onLeave === null ? (
        <p className="advice-detail text-soft">{note === null ? (advice?.detail ?? "") : ""}</p>
      ) : (
        <Button onClick={onLeave}>Back to the lock</Button>
      )}
    </div>
  );
}
