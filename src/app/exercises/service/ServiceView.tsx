import { useMemo } from "react";
import type { Chance } from "../../../statistics/chance";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { useStore } from "../../parts/page/useStore";
import { VisitDebrief } from "./VisitDebrief";
import { VisitSetupBar } from "./VisitSetupBar";
import { VisitPanels, VisitWork } from "./VisitWork";
import { VisitNotes } from "./visitNotes";
import { VisitSession } from "./visitSession";
import { visitSetupOf } from "./visitSetup";

interface ServiceViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

/** A service visit: ask, read, look, measure, change or leave alone, prove, record; in any order. */
export function ServiceView({ query, chance }: ServiceViewProps) {
  const session = useStore(useMemo(() => new VisitSession(visitSetupOf(query, chance), chance), [query, chance]));
  useKeptJobs(session, VisitNotes);
  const { isOver } = session.visit;
  return (
    <div className="workplace">
      <div className="workplace-hand">
        {!isOver && <VisitSetupBar session={session} />}
        {isOver ? <VisitDebrief session={session} /> : <VisitWork session={session} />}
      </div>
      {!isOver && (
        <div className="workplace-panels">
          <VisitPanels session={session} isOnce={false} />
        </div>
      )}
    </div>
  );
}
