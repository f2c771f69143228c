import { adviceFor } from "../../dialing/advice";
import { stateInWords } from "../../dialing/dialingMachine";
import type { BenchSession } from "./benchSession";
import { headline } from "./resultRows";

/** Sizes change with every graduation; a spoken sentence changes only when something new is to be done. */
export const withoutSizes = (say: string) =>
  say.replace(/^[\d.]+ past (\S+?)\. /, "Past $1. ").replace(/turned back [\d.]+ on/, "turned back on");

/** What is told at a change of state: the next step in full help, the state itself otherwise. */
function statusText(session: BenchSession): string {
  const { attempt, outcome, state, setup } = session;
  if (outcome !== null && (state === "open" || state === "failed")) return headline(outcome);
  if (setup.help === "silent") return "";
  if (setup.help === "full") return withoutSizes(adviceFor(attempt, state, "full")?.say ?? "");
  return stateInWords(state, session.actor.getSnapshot().context.number);
}

interface AnnouncerProps {
  readonly session: BenchSession;
  /** Whether faults stay untold until an own estimate is given. */
  readonly isWithheld: boolean;
}

/** Speaks to screen readers: states politely, faults at once. In silent help only the end is told. */
export function Announcer({ session, isWithheld }: AnnouncerProps) {
  const isMute = isWithheld || (session.setup.help === "silent" && session.outcome === null);
  const faults = isMute ? [] : session.faults();
  // While one dials, the fault just made; once it is over, the one that spoiled it.
  const told = session.outcome === null ? faults.at(-1) : faults[0];
  return (
    <div className="visually-hidden">
      <p role="status" data-testid="state">
        {statusText(session)}
      </p>
      <p role="alert">{told?.message ?? ""}</p>
    </div>
  );
}
