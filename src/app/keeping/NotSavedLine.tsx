import { useState } from "react";
import { countText } from "../../wording/amountWords";
import { Button } from "../parts/controls/Button";
import { useStore } from "../parts/page/useStore";
import { keeping, reloadSafely } from "./keeping";
import "./notSaved.css";

const COPIED = "A copy is in this browser until then.";

/**
 * Says at once that records are not saved, why, and what to do; draws nothing while all is well. To be placed wherever
 * records are made.
 */
export function NotSavedLine() {
  const [refusal, setRefusal] = useState<string | null>(null);
  const { problem, waiting, remedy, isCopied } = useStore(keeping).state;
  if (problem === null) return null;
  const which = waiting === 0 ? "" : ` (${countText(waiting, "record")})`;
  return (
    <aside className="not-saved row justify-between gap-x-4 px-5 py-3 text-small print:hidden" aria-label="Saving">
      <p className="flex-[1_1_320px]" role="alert">
        <strong>Not saved{which}:</strong> {refusal ?? problem} {waiting > 0 && isCopied && COPIED}
      </p>
      {remedy === "reload" ? (
        <Button className="slim" onClick={() => setRefusal(reloadSafely())}>
          Reload the page
        </Button>
      ) : (
        <Button className="slim" onClick={() => keeping.retry()}>
          Try again
        </Button>
      )}
    </aside>
  );
}
