import { useSelector } from "@xstate/react";
import { FIT_CHECKS } from "../../../fitting/fitCheck";
import { CHECK_LABELS } from "../../../fitting/fitWords";
import { Button } from "../../parts/controls/Button";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import type { FittingSession } from "./fittingSession";
import { STAGE_WORDS } from "./fittingWords";
import { observationText } from "./seen/observationWords";

interface ChecksProps {
  readonly session: FittingSession;
  /** Whether this is a try of a sitting, which shows no debrief. */
  readonly isOnce: boolean;
}

/** What to do with parts that are spoiled. */
const spentAdvice = (isOnce: boolean) => (isOnce ? "End this try." : "Read the debrief, then start again.");

/** The checks a technician makes on a lock that is together, and what they showed. None of them judges. */
export function Checks({ session, isOnce }: ChecksProps) {
  const state = useSelector(session.chart, stateOf);
  const { checks } = useSelector(session.chart, memoryOf);
  if (state === "declared") return null;
  const isTogether = state === "coupled" || state === "closed";
  return (
    <section className="panel stack" aria-label="Checks">
      <h2>
        Checks <small>plus reads too much</small>
      </h2>
      <p>
        {STAGE_WORDS[state]} {state === "spent" && spentAdvice(isOnce)}
      </p>
      <div className="row">
        {FIT_CHECKS.map((check) => (
          <Button key={check} className="slim" disabled={!isTogether} onClick={() => session.check(check)}>
            {CHECK_LABELS[check]}
            {checks.includes(check) && <span aria-hidden="true"> ●</span>}
            {checks.includes(check) && <span className="visually-hidden">, made</span>}
          </Button>
        ))}
      </div>
      <p className="min-h-[1.45em] font-semibold" role="status">
        {session.log[0] === undefined ? "" : observationText(session.log[0])}
      </p>
      {session.log.length > 1 && (
        <ol className="plain stack gap-1 text-small text-soft" aria-label="Earlier checks, latest first">
          {session.log.slice(1).map((seen, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a log has no other name
            <li key={session.log.length - k}>{observationText(seen)}</li>
          ))}
        </ol>
      )}
      <div className="row">
        <Button disabled={state === "apart"} onClick={() => session.declare()}>
          {isOnce ? "The dial is fitted" : "The dial is fitted: show the debrief"}
        </Button>
      </div>
    </section>
  );
}
