import { useSelector } from "@xstate/react";
import { Button } from "../../parts/controls/Button";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import type { FittingSession } from "./fittingSession";
import { STAGE_WORDS } from "./fittingWords";
import { StepCaution } from "./StepCaution";
import { CheckList } from "./seen/CheckList";

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
      <h2 tabIndex={-1}>Checks</h2>
      <p>
        {STAGE_WORDS[state]} {state === "spent" && spentAdvice(isOnce)}
      </p>
      {isTogether && <CheckList work={session} made={checks} />}
      <StepCaution id={isTogether ? "prove" : null} />
      <div className="row">
        <Button disabled={state === "apart"} onClick={() => session.declare()}>
          {isOnce ? "The dial is fitted" : "The dial is fitted: show the debrief"}
        </Button>
      </div>
    </section>
  );
}
