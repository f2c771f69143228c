import { useState } from "react";
import { Button } from "../../parts/controls/Button";
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
      <Button aria-haspopup="dialog" onClick={() => setAsked(true)}>
        Break off
      </Button>
      <Dialog title="End this sitting now?" isOpen={isAsked} onClose={() => setAsked(false)} closeWord="Stay">
        <p>The sitting ends here and is recorded as broken off. You cannot go on with it later.</p>
        <div className="row mt-4">
          <Button onClick={() => session.abandon(pageTime.now())}>End it</Button>
        </div>
      </Dialog>
    </>
  );
}
