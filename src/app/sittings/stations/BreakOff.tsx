import { useState } from "react";
import { Dialog } from "../../parts/controls/Dialog";
import type { SittingSession } from "../session/sittingSession";
import { pageTime } from "../session/steadyTime";

/**
 * Ends the sitting before its end; asks once, over the page, so that the dial stays where it is. The hand is led to the
 * answer that loses nothing, and Escape gives it.
 */
export function BreakOff({ session }: { readonly session: SittingSession }) {
  const [isAsked, setAsked] = useState(false);
  return (
    <>
      <button type="button" className="button" aria-haspopup="dialog" onClick={() => setAsked(true)}>
        Break off
      </button>
      <Dialog title="End this sitting now?" isOpen={isAsked} onClose={() => setAsked(false)} closeWord="Stay">
        <p>The sitting ends here and is recorded as broken off. You cannot go on with it later.</p>
        <div className="row mt-4">
          <button type="button" className="button" onClick={() => session.abandon(pageTime.now())}>
            End it
          </button>
        </div>
      </Dialog>
    </>
  );
}
