import { useSelector } from "@xstate/react";
import { useMemo } from "react";
import type { Chance } from "../../../statistics/chance";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { stateOf } from "../../parts/page/ofChart";
import { useStore } from "../../parts/page/useStore";
import { Cautions } from "../handover/parts/Cautions";
import { ChangeActs, InspectActs, type VisitProps } from "./VisitActs";
import { VisitDebrief } from "./VisitDebrief";
import { VisitHelp } from "./VisitHelp";
import { VisitPapers } from "./VisitPapers";
import { VisitRecordForm } from "./VisitRecordForm";
import { VisitSetupBar } from "./VisitSetupBar";
import { VisitNotes } from "./visitNotes";
import { VisitSession } from "./visitSession";
import { visitSetupOf } from "./visitSetup";
import { PHASE_WORDS, VISIT_CAUTIONS } from "./visitWords";

/** The lock, where the visit is, and what was answered and shown. */
function AtTheDoor({ session }: VisitProps) {
  const phase = useSelector(session.visit.chart, stateOf);
  const { kind, assembly } = session.visit.lock;
  return (
    <section className="panel stack" aria-label="At the door">
      <h2>
        At the door <small>{kind === "electronic" ? "electronic lock" : "mechanical lock"}, in use for years</small>
      </h2>
      <p>
        {PHASE_WORDS[phase]} {assembly.hasCover ? "The cover is on." : "The cover is off."}
      </p>
      <p className="min-h-[1.45em] font-semibold" role="status">
        {session.log[0] ?? ""}
      </p>
      <InspectActs session={session} />
      {session.log.length > 1 && (
        <ol className="plain stack gap-1 text-small text-soft" aria-label="Earlier, latest first">
          {session.log.slice(1).map((line, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line of a log has no other name
            <li key={session.log.length - k}>{line}</li>
          ))}
        </ol>
      )}
    </section>
  );
}

interface ServiceViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

/** A service visit: ask, read, look, measure, change or leave alone, prove, record; in any order. */
export function ServiceView({ query, chance }: ServiceViewProps) {
  const session = useStore(useMemo(() => new VisitSession(visitSetupOf(query, chance), chance), [query, chance]));
  useKeptJobs(session, VisitNotes);
  if (session.visit.isOver) {
    return (
      <div className="workplace">
        <div className="workplace-hand">
          <VisitDebrief session={session} />
        </div>
      </div>
    );
  }
  return (
    <div className="workplace">
      <div className="workplace-hand">
        <VisitSetupBar session={session} />
        <AtTheDoor session={session} />
        <ChangeActs session={session} />
      </div>
      <div className="workplace-panels">
        <VisitPapers session={session} />
        <VisitHelp session={session} />
        <VisitRecordForm session={session} />
        <Cautions cautions={VISIT_CAUTIONS} source="common practice, no source" />
      </div>
    </div>
  );
}
