import { useSelector } from "@xstate/react";
import { adviceFor, heardAdvice } from "../../../dialing/advice";
import { type DialingState, stateInWords } from "../../../dialing/dialingMachine";
import { faultsWithoutFigures } from "../../hand/faultsWithoutFigures";
import { spokenSpinOff } from "../../hand/spinOffWords";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { headline } from "../../replay/headline";
import type { BenchSession } from "./benchSession";

/** What is said at a change of state: the next step in full help and after the end, the state itself otherwise. */
function statusText({ attempt, outcome, setup }: BenchSession, state: DialingState, number: number): string {
  if (outcome !== null && (state === "open" || state === "failed")) return headline(outcome);
  if (state === "thrown" && attempt.spinOff !== null) return spokenSpinOff(attempt.spinOff, attempt.pack !== null);
  if (state === "secured") return "Secured.";
  if (setup.help === "silent") return "";
  if (setup.help === "full") return heardAdvice(adviceFor(attempt, state, "full"));
  return stateInWords(state, number);
}

interface AnnouncerProps {
  readonly session: BenchSession;
  /** Whether faults stay untold until an own estimate is given. */
  readonly isWithheld: boolean;
}

/** Speaks to screen readers: states politely, faults at once. In silent help only the end is said. */
export function Announcer({ session, isWithheld }: AnnouncerProps) {
  const state = useSelector(session.chart, stateOf);
  const { number } = useSelector(session.chart, memoryOf);
  const isMute = isWithheld || (session.setup.help === "silent" && session.outcome === null);
  const faults = isMute ? [] : session.faults();
  // While one dials, the fault just made; once it is over, the one that spoiled it.
  const said = session.outcome === null ? faults.at(-1) : faults[0];
  const hidesFigures = session.setup.help === "counts" && session.outcome === null;
  const [told] = said === undefined || !hidesFigures ? [said] : faultsWithoutFigures([said]);
  return (
    <div className="visually-hidden">
      <p role="status" data-testid="state">
        {statusText(session, state, number)}
      </p>
      <p role="alert">{told?.message ?? ""}</p>
    </div>
  );
}
