import { useState } from "react";
import type { SittingSession } from "./sittingSession";

/** Ends the sitting before its end; asks once. */
export function BreakOff({ session }: { readonly session: SittingSession }) {
  const [isAsked, setAsked] = useState(false);
  if (!isAsked) {
    return (
      <button type="button" className="button" onClick={() => setAsked(true)}>
        Break off
      </button>
    );
  }
  return (
    <div className="sitting-ask" role="alert">
      <span>It ends here and is recorded as broken off.</span>
      <button type="button" className="button primary" onClick={() => session.abandon(Date.now())}>
        End it
      </button>
      <button type="button" className="button" onClick={() => setAsked(false)}>
        Stay
      </button>
    </div>
  );
}
