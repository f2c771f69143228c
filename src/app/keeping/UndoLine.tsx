import { useEffect, useRef } from "react";
import { Button } from "../parts/controls/Button";
import { ToldLine, useDoing } from "../parts/Told";
import type { CurrentLogbook } from "./currentLogbook";

/** What was done last and can be undone; the focus goes to it, for what led here is gone. */
export function UndoLine({ current }: { readonly current: CurrentLogbook }) {
  const { done } = current;
  const button = useRef<HTMLButtonElement>(null);
  const { told, act } = useDoing();
  useEffect(() => {
    if (done !== null) button.current?.focus();
  }, [done]);
  return (
    <div className="row gap-x-4 text-small text-soft">
      {done !== null && (
        <>
          <p role="status">{done.sentence} You can undo this until you close or reload the page.</p>
          <Button ref={button} className="slim" onClick={() => act(() => current.undo())}>
            Undo
          </Button>
          <Button className="slim" onClick={() => current.closeUndo()}>
            Close
          </Button>
        </>
      )}
      <ToldLine told={told} />
    </div>
  );
}
