import { useSelector } from "@xstate/react";
import { memoryOf, stateOf } from "../../../parts/page/ofChart";
import { WordLink } from "../../../words/WordLink";
import { WordsHere } from "../../../words/WordsHere";
import { CheckList } from "../seen/CheckList";
import type { InspectionSession } from "./inspectionSession";

/** The checks of a lock that somebody else has fitted. None of them judges, and no part is moved. */
export function FitChecks({ session }: { readonly session: InspectionSession }) {
  const isNamed = useSelector(session.chart, stateOf) === "named";
  const { checks } = useSelector(session.chart, memoryOf);
  return (
    <section className="panel stack" aria-label="Checks">
      <div className="spread">
        <h2>Checks</h2>
        <WordsHere>
          <WordLink word="end-play">end play</WordLink>
          <WordLink word="ring-off-center">off center</WordLink>
          <WordLink word="parallax">parallax</WordLink>
        </WordsHere>
      </div>
      <p>
        Somebody else has fitted this lock. Check it as often as you like. You move no part: the cover comes off where a
        check needs it, and goes back as it was.
      </p>
      <CheckList
        assembly={session.assembly}
        isOff={isNamed}
        log={session.log}
        made={checks}
        onCheck={(check) => session.check(check)}
      />
    </section>
  );
}
