import { type KeyboardEvent, useEffect, useRef, useState } from "react";
import type { SittingSession } from "./sittingSession";

interface AskProps {
  readonly onEnd: () => void;
  readonly onStay: () => void;
}

/** The question before the end; the hand is led to the answer that loses nothing, and Escape gives it. */
function Ask({ onEnd, onStay }: AskProps) {
  const stay = useRef<HTMLButtonElement>(null);
  useEffect(() => stay.current?.focus(), []);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === "Escape") onStay();
  };
  return (
    <div className="sitting-ask">
      <p role="alert">It ends here and is recorded as broken off.</p>
      <button type="button" className="button primary" onClick={onEnd} onKeyDown={onKeyDown}>
        End it
      </button>
      <button ref={stay} type="button" className="button" onClick={onStay} onKeyDown={onKeyDown}>
        Stay
      </button>
    </div>
  );
}

/** Ends the sitting before its end; asks once. */
export function BreakOff({ session }: { readonly session: SittingSession }) {
  const [isAsked, setAsked] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const hasStayed = useRef(false);
  useEffect(() => {
    if (!isAsked && hasStayed.current) button.current?.focus();
  }, [isAsked]);
  const stay = () => {
    hasStayed.current = true;
    setAsked(false);
  };
  if (isAsked) return <Ask onEnd={() => session.abandon(Date.now())} onStay={stay} />;
  return (
    <button ref={button} type="button" className="button" onClick={() => setAsked(true)}>
      Break off
    </button>
  );
}
