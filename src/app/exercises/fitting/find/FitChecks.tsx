import { useSelector } from "@xstate/react";
import { checksOf } from "../../../../fitting/fitChecks";
import { memoryOf, stateOf } from "../../../parts/page/ofChart";
import { CheckList } from "../seen/CheckList";
import type { InspectionSession } from "./inspectionSession";

/** The checks of a lock that somebody else has fitted. None of them judges, and no part is moved. */
export function FitChecks({ session }: { readonly session: InspectionSession }) {
  const isNamed = useSelector(session.chart, stateOf) === "named";
  const { checks } = useSelector(session.chart, memoryOf);
  return (
    <section className="panel stack" aria-label="Checks">
      <h2 tabIndex={-1}>Checks</h2>
      <p>
        Somebody else has fitted this lock. Check it as often as you like. You move no part: the cover comes off where a
        check needs it, and goes back as it was.
      </p>
      {session.help !== "silent" && (
        <p>
          {checks.length} of {checksOf(session.assembly).length} checks made.
        </p>
      )}
      <CheckList work={session} made={checks} isOff={isNamed} />
    </section>
  );
}
