import { BreakOff } from "./BreakOff";
import type { SittingSession } from "./sittingSession";
import { clockText } from "./sittingWords";

const SAYS = {
  paused: "Paused. The clock stands.",
  interrupted: "The page was loaded anew. The clock stood in between; a try that was under way is lost.",
} as const;

/** A sitting that stands: paused, or taken up again after a reload. */
export function StandingView({ session }: { readonly session: SittingSession }) {
  const { triesDone, answersGiven, triesLost } = session.memory;
  const says = session.state === "paused" ? SAYS.paused : SAYS.interrupted;
  return (
    <div className="sitting-page">
      <p className="sitting-title">{session.sheet.title}</p>
      <p role="status">{says}</p>
      <p>
        {triesDone} of {session.tries.length} tries done{triesLost > 0 ? `, ${triesLost} of them lost` : ""};{" "}
        {session.questions.length > 0 && `${answersGiven} of ${session.questions.length} questions answered; `}
        {clockText(session.worked(0))} worked.
      </p>
      <div className="sitting-buttons">
        <button type="button" className="button primary" onClick={() => session.resume(Date.now())}>
          Go on: the clock runs
        </button>
        <BreakOff session={session} />
      </div>
    </div>
  );
}
