import { useSelector } from "@xstate/react";
import { Button } from "../../parts/controls/Button";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { clockText } from "../../verdicts/sittingWords";
import type { SittingSession } from "../session/sittingSession";
import { standingWords } from "../session/standingWords";
import { pageTime } from "../session/steadyTime";
import { useNow } from "../session/useSitting";
import { BreakOff } from "./BreakOff";
import { SittingHead } from "./SittingHead";

/** A sitting in a pause, or after the page was loaded anew: where it is, and the way on. */
export function StandingView({ session }: { readonly session: SittingSession }) {
  const now = useNow();
  const { triesDone, answersGiven, triesLost } = useSelector(session.chart, memoryOf);
  const state = useSelector(session.chart, stateOf);
  return (
    <div className="sitting-page page gap-6 max-w-[920px] pt-6">
      <header>
        <p className="text-title font-semibold">{session.sheet.title}</p>
        <SittingHead session={session} />
      </header>
      <p role="status">{standingWords({ state, plan: session.plan })}</p>
      <p>
        {triesDone} of {session.tries.length} tries done{triesLost > 0 ? `, ${triesLost} of them lost` : ""}.{" "}
        {session.questions.length > 0 && `${answersGiven} of ${session.questions.length} questions answered. `}
        Time used: {clockText(session.worked(now))}.
      </p>
      <div className="row">
        <Button className="primary" onClick={() => session.resume(pageTime.now())}>
          Go on
        </Button>
        <BreakOff session={session} />
      </div>
    </div>
  );
}
