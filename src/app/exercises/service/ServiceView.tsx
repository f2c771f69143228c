import { useMemo } from "react";
import type { Chance } from "../../../statistics/chance";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { useKeptWork } from "../../keeping/useKeptWork";
import { Notice } from "../../parts/Notice";
import { useFollowedBy } from "../../parts/page/useFollowedBy";
import { useFoundFocus } from "../../parts/page/useFoundFocus";
import { useStore } from "../../parts/page/useStore";
import { firstVisit, isVisitUnderWay, keptVisitOf, VISIT_KEY, VISIT_WORK } from "./keptVisit";
import { VisitDebrief } from "./VisitDebrief";
import { VisitPapers } from "./VisitPapers";
import { VisitSetupBar } from "./VisitSetupBar";
import { VisitPanels, VisitWork } from "./VisitWork";
import { VisitNotes } from "./visitNotes";
import type { VisitSession } from "./visitSession";

interface ServiceViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

/** The address follows the visit, so that a reload goes on with it. */
function addressOf({ setup: { lock, help, seed } }: VisitSession): string {
  const ofLock = lock === "any" ? "" : `&profile=${lock}`;
  return `#/fitting?view=service${ofLock}&help=${help}&seed=${seed}`;
}

/** A service visit: ask, read, look, measure, change or leave alone, prove, record; in any order. */
export function ServiceView({ query, chance }: ServiceViewProps) {
  const begun = useMemo(() => firstVisit(query, chance, performance.now()), [query, chance]);
  const session = useStore(begun.session);
  const said = useKeptWork({
    ...{ session, problem: begun.problem, key: VISIT_KEY, kind: VISIT_WORK },
    keptNow: () => (isVisitUnderWay(session) ? keptVisitOf(session, performance.now()) : null),
    isUnderWay: isVisitUnderWay,
  });
  useKeptJobs(session, VisitNotes);
  useFollowedBy(session.round === 0 ? null : addressOf(session));
  const { isOver } = session.visit;
  const place = useFoundFocus(isOver);
  return (
    <div className="workplace">
      <div ref={place} className="workplace-hand">
        {said !== null && <Notice>{said}</Notice>}
        {!isOver && <VisitSetupBar session={session} />}
        {isOver ? <VisitDebrief session={session} /> : <VisitWork session={session} />}
      </div>
      <div className="workplace-panels">
        {isOver ? <VisitPapers session={session} isOpen /> : <VisitPanels session={session} isOnce={false} />}
      </div>
    </div>
  );
}
