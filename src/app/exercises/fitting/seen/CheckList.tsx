import type { Assembly } from "../../../../fitting/assembly";
import type { FitCheck, FitObservation } from "../../../../fitting/fitCheck";
import { checksOf } from "../../../../fitting/fitChecks";
import { checkLabel } from "../../../../fitting/fitWords";
import { Button } from "../../../parts/controls/Button";
import { observationText } from "./observationWords";

interface CheckListProps {
  readonly assembly: Assembly;
  readonly made: readonly FitCheck[];
  /** What they showed, latest first. */
  readonly log: readonly FitObservation[];
  /** While there is nothing to check. */
  readonly isOff?: boolean;
  readonly onCheck: (check: FitCheck) => void;
}

/** A button for each check, and what those that were made have shown. */
export function CheckList({ assembly, made, log, isOff = false, onCheck }: CheckListProps) {
  return (
    <>
      <div className="row">
        {checksOf(assembly).map((check) => (
          <Button key={check} className="slim" disabled={isOff} onClick={() => onCheck(check)}>
            {checkLabel(check, assembly)}
            {made.includes(check) && <span aria-hidden="true"> ✓</span>}
            {made.includes(check) && <span className="visually-hidden">, made</span>}
          </Button>
        ))}
      </div>
      <p className="min-h-[1.45em] font-semibold" role="status">
        {log[0] === undefined ? "" : observationText(log[0])}
      </p>
      {log.length > 1 && (
        <ol className="plain stack gap-1 text-small text-soft" aria-label="Earlier checks, latest first">
          {log.slice(1).map((seen, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a log has no other name
            <li key={log.length - k}>{observationText(seen)}</li>
          ))}
        </ol>
      )}
    </>
  );
}
