import { useEffect } from "react";
import { focusDial } from "../../hand/dial/focusDial";
import { useStore } from "../../parts/page/useStore";
import type { SittingSession } from "../session/sittingSession";
import { pageTime } from "../session/steadyTime";
import type { JobInHand } from "../tries/tryInHand";
import { ChangePanels, ChangeStationHand } from "./ChangeStation";
import { FittingPanels, FittingStationHand } from "./FittingStation";
import { HandoverPanels, HandoverStationHand } from "./HandoverStation";
import { InspectionPanels, InspectionStationHand } from "./InspectionStation";
import { ServicePanels, ServiceStationHand } from "./ServiceStation";
import { SittingPanel } from "./SittingPanel";
import { TroublePanels, TroubleStationHand } from "./TroubleStation";

/** Tells the sitting whenever the job goes on: its own screen works it. */
function useWork(session: SittingSession, one: JobInHand): void {
  useEffect(() => {
    const note = () => session.noteWork(performance.now(), pageTime.now());
    const ends = one.exercise.map((store) => store.subscribe(note));
    return () => {
      for (const end of ends) end();
    };
  }, [session, one]);
}

function Hand({ one }: Pick<JobStationProps, "one">) {
  switch (one.kind) {
    case "change":
      return <ChangeStationHand one={one} />;
    case "trouble":
      return <TroubleStationHand one={one} />;
    case "handover":
      return <HandoverStationHand one={one} />;
    case "fitting":
      return <FittingStationHand one={one} />;
    case "service":
      return <ServiceStationHand one={one} />;
    case "inspection":
      return <InspectionStationHand one={one} />;
  }
}

function Panels({ session, one }: JobStationProps) {
  switch (one.kind) {
    case "change":
      return <ChangePanels one={one} />;
    case "trouble":
      return <TroublePanels one={one} onStand={() => session.endTry(pageTime.now())} />;
    case "handover":
      return <HandoverPanels one={one} />;
    case "fitting":
      return <FittingPanels one={one} />;
    case "service":
      return <ServicePanels one={one} />;
    case "inspection":
      return <InspectionPanels one={one} />;
  }
}

/** On a phone what a hand fits and its parts are placed in one column, parts before checks. */
const AMONG_EACH_OTHER = "phone:contents";

interface JobStationProps {
  readonly session: SittingSession;
  readonly one: JobInHand;
}

/** A try at a job: the exercise as its page has it, once, and without its result. */
export function JobStation({ session, one }: JobStationProps) {
  useStore(one);
  useWork(session, one);
  useEffect(focusDial, []);
  const placing = one.kind === "fitting" ? AMONG_EACH_OTHER : "";
  return (
    <div className="workplace sitting-workplace sitting-job">
      {/* What has ended stays in sight, and takes nothing more. */}
      <div className={`workplace-hand ${placing}`} inert={one.isEnded}>
        <Hand one={one} />
      </div>
      <div className="workplace-panels">
        <SittingPanel session={session} one={one} />
        <div className={placing} inert={one.isEnded}>
          <Panels session={session} one={one} />
        </div>
        <footer className="workplace-foot flex phone:flex-wrap items-start gap-5 mt-auto px-edge py-4 text-fine leading-[1.4] text-soft">
          <p>A practice result is not a certificate.</p>
        </footer>
      </div>
    </div>
  );
}
