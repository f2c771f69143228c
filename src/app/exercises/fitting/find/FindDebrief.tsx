import { isInspectionRight } from "../../../../drill/marking/jobRule";
import type { FitFault } from "../../../../fitting/fitFaultCode";
import { checksText, FAULT_WORDS, foundByText } from "../../../../fitting/fitWords";
import { isGuessed, overlooked, unfounded } from "../../../../fitting/inspect/inspectionResult";
import { Button } from "../../../parts/controls/Button";
import type { InspectionSession } from "./inspectionSession";

interface FaultLineProps extends Pick<InspectionSession, "assembly"> {
  readonly fault: FitFault;
  readonly isFound: boolean;
}

/** One fault that there was: whether it was found, which checks show it, and what to do about it. */
function FaultLine({ fault, isFound, assembly }: FaultLineProps) {
  const { what, does, fix } = FAULT_WORDS[fault];
  return (
    <li>
      <strong>
        {isFound ? "Found" : "Overlooked"}: {what}
      </strong>{" "}
      {does} <em>Found by:</em> {foundByText(fault, assembly)}. <em>Fix:</em> {fix}
    </li>
  );
}

/** What was wrong, what of it was named, and which checks were skipped. */
export function FindDebrief({ session }: { readonly session: InspectionSession }) {
  const { result, assembly } = session;
  const { faults, skipped } = result;
  const missed = overlooked(result);
  return (
    <section className="panel stack" aria-label="Debrief">
      <h2 tabIndex={-1}>{isInspectionRight(result) ? "Right answer" : "Not the right answer"}</h2>
      {faults.length === 0 ? (
        <p>Nothing was wrong with this fit.</p>
      ) : (
        <ol className="stack">
          {faults.map((fault) => (
            <FaultLine key={fault} fault={fault} isFound={!missed.includes(fault)} assembly={assembly} />
          ))}
        </ol>
      )}
      {unfounded(result).map((fault) => (
        <p key={fault}>
          <strong>You named this, but it is not wrong:</strong> {FAULT_WORDS[fault].what} <em>Would be found by:</em>{" "}
          {foundByText(fault, assembly)}.
        </p>
      ))}
      {isGuessed(result) && <p>This was a guess: you did not make the checks that show it.</p>}
      <p>
        {skipped.length === 0 ? "You made every check." : `Checks you did not make: ${checksText(skipped, assembly)}.`}
      </p>
      <p className="text-soft text-small">Practice result, not a certificate.</p>
      <div className="row">
        <Button className="primary" onClick={() => session.again()}>
          Judge another fit
        </Button>
      </div>
    </section>
  );
}
