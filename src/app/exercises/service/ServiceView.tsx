import { useMemo } from "react";
import type { Chance } from "../../../statistics/chance";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { Notice } from "../../parts/Notice";
import { useFoundFocus } from "../../parts/page/useFoundFocus";
import { useStore } from "../../parts/page/useStore";
import { recallVisit } from "./keptVisit";
import { useKeptVisit } from "./useKeptVisit";
import { VisitDebrief } from "./VisitDebrief";
import { VisitPapers } from "./VisitPapers";
import { VisitSetupBar } from "./VisitSetupBar";
import { VisitPanels, VisitWork } from "./VisitWork";
import { VisitNotes } from "./visitNotes";
import { VisitSession } from "./visitSession";
import { visitSetupOf } from "./visitSetup";

interface ServiceViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

/** The visit that goes on here, or a new one. */
function begin(query: URLSearchParams, chance: Chance) {
  const { kept, problem } = recallVisit(query);
  const session = new VisitSession(kept?.setup ?? visitSetupOf(query, chance), chance);
  if (kept !== null) session.resume(kept.acts, kept.worked_ms);
  return { session, problem };
}

/** A service visit: ask, read, look, measure, change or leave alone, prove, record; in any order. */
export function ServiceView({ query, chance }: ServiceViewProps) {
  const begun = useMemo(() => begin(query, chance), [query, chance]);
  const session = useStore(begun.session);
  useKeptVisit(session);
  useKeptJobs(session, VisitNotes);
  const { isOver } = session.visit;
  const place = useFoundFocus(isOver);
  return (
    <div className="workplace">
      <div ref={place} className="workplace-hand">
        {begun.problem !== null && <Notice>{begun.problem}</Notice>}
        {!isOver && <VisitSetupBar session={session} />}
        {isOver ? <VisitDebrief session={session} /> : <VisitWork session={session} />}
      </div>
      <div className="workplace-panels">
        {isOver ? <VisitPapers session={session} isOpen /> : <VisitPanels session={session} isOnce={false} />}
      </div>
    </div>
  );
}
