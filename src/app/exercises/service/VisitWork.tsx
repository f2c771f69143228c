import { useSelector } from "@xstate/react";
import { stateOf } from "../../parts/page/ofChart";
import { SizesNote } from "../fitting/seen/SizesNote";
import { Cautions } from "../handover/parts/Cautions";
import { ChangeActs, InspectActs, type VisitProps } from "./VisitActs";
import { VisitHelp } from "./VisitHelp";
import { VisitPapers } from "./VisitPapers";
import { VisitRecordForm } from "./VisitRecordForm";
import { PHASE_WORDS, VISIT_CAUTIONS } from "./visitWords";

/** The lock, where the visit is, and what was answered and shown. */
function AtTheDoor({ session }: VisitProps) {
  const phase = useSelector(session.visit.chart, stateOf);
  const { assembly } = session.visit.lock;
  return (
    <section className="panel stack w-full" aria-label="At the door">
      <h2 tabIndex={-1}>
        At the door <small>{session.profile.title}, in use for years</small>
      </h2>
      <p>
        {PHASE_WORDS[phase]} {assembly.hasCover ? "The cover is on." : "The cover is off."}
      </p>
      <p className="min-h-[4.35em] font-semibold" role="status">
        {session.log[0] ?? "Nothing is done yet."}
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

/** What is seen and read: the door, the lock, its papers. */
export const VisitWork = ({ session }: VisitProps) => (
  <>
    <AtTheDoor session={session} />
    <VisitPapers session={session} isOpen={false} />
  </>
);

interface VisitPanelsProps extends VisitProps {
  /** Whether this is a try of a sitting, which shows no debrief. */
  readonly isOnce: boolean;
}

/** What is left to inspect, what is changed or left alone, and what is written. */
export const VisitPanels = ({ session, isOnce }: VisitPanelsProps) => (
  <>
    <VisitHelp session={session} />
    <ChangeActs session={session} />
    <VisitRecordForm key={session.round} session={session} isOnce={isOnce} />
    <Cautions cautions={VISIT_CAUTIONS} source="common practice, no source" />
    <div className="panel">
      <SizesNote profile={session.profile} />
    </div>
  </>
);
