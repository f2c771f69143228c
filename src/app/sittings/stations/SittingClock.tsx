import { useState } from "react";
import { Button } from "../../parts/controls/Button";
import { clockText } from "../../verdicts/sittingWords";
import type { SittingSession } from "../session/sittingSession";
import { useNow } from "../session/useSitting";

/** The clock of a sitting: time used, of the time there is. The sheet may let it be hidden. */
export function SittingClock({ session }: { readonly session: SittingSession }) {
  const now = useNow();
  const [isHidden, setHidden] = useState(false);
  const { timeLimit_ms } = session.plan;
  const mayHide = session.sheet.sitting?.clockHideable ?? true;
  const limit = timeLimit_ms === null ? "" : ` of ${clockText(timeLimit_ms)}`;
  return (
    <div className="row gap-4 phone:flex-none phone:flex-nowrap phone:gap-3">
      <span role="timer" aria-label="Time used">
        {isHidden ? "clock hidden" : `${clockText(session.worked(now))}${limit}`}
      </span>
      {mayHide && (
        <Button onClick={() => setHidden(!isHidden)}>{isHidden ? "Show the clock" : "Hide the clock"}</Button>
      )}
    </div>
  );
}
