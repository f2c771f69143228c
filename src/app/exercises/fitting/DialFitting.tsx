import { useSelector } from "@xstate/react";
import { useState } from "react";
import type { Help } from "../../../dialing/advice";
import { nextStep } from "../../../fitting/teaching/nextStep";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import type { Chance } from "../../../statistics/chance";
import { HelpChoice, type HelpOffer } from "../../hand/HelpChoice";
import { LockChoice } from "../../hand/LockChoice";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { Button } from "../../parts/controls/Button";
import { Notice } from "../../parts/Notice";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { useFoundFocus } from "../../parts/page/useFoundFocus";
import { useStore } from "../../parts/page/useStore";
import { Cautions } from "../handover/parts/Cautions";
import { Checks } from "./Checks";
import { FitDebrief } from "./FitDebrief";
import { CAUTION_SOURCE, CAUTIONS } from "./fittingCautions";
import { FittingNotes } from "./fittingNotes";
import type { FittingSession } from "./fittingSession";
import { Gauges } from "./Gauges";
import { lastFitted } from "./kept/keptFitting";
import { nextStepWords } from "./nextStepWords";
import { OwnReckoning } from "./OwnReckoning";
import { PartsTray } from "./PartsTray";
import { HeightNote, SizesNote } from "./seen/SizesNote";
import { looked } from "./turn/handOnDial";
import { TurnedSection } from "./turn/TurnedSection";
import { useKeptFitting } from "./useKeptFitting";
import "../../parts/workplace.css";

interface DialFittingProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

const HELPS: readonly HelpOffer[] = [
  { help: "full", label: "Full", title: "Full help: the next wise step, and gauges with their limits" },
  { help: "counts", label: "Counts", title: "Counts: gauges without limits, no next step" },
  { help: "silent", label: "Silent", title: "Silent: no gauges; measure by your own checks" },
];

/** The address follows the help, so that a reload or a link has the same. */
function takeHelp(session: FittingSession, help: Help): void {
  session.setHelp(help);
  history.replaceState(null, "", `#/fitting?profile=${session.profile.id}&help=${help}`);
}

/** What is wise next, and why; while the debrief is read, nothing. */
function NextStepLine({ session }: { readonly session: FittingSession }) {
  const { checks } = useSelector(session.chart, memoryOf);
  if (session.help !== "full") return null;
  const { assembly, lock } = session;
  const { say, why } = nextStepWords(nextStep(assembly, lock, checks), assembly, lock.perTurn);
  return (
    <p className="min-h-[2.9em] max-w-[760px] phone:text-small">
      <strong>Next: {say}</strong> {why}
    </p>
  );
}

/** Fitting: ring, dial, spindle and key, in any order; what comes of it shows in the checks and in the debrief. */
export function DialFitting({ query, chance }: DialFittingProps) {
  const asked = query.get("profile");
  const [id] = useState(() => asked ?? lastFitted());
  const profile = SHIPPED_PROFILES.find((one) => one.id === id) ?? SHIPPED_PROFILES[0];
  const help = HELPS.find((one) => one.help === query.get("help"))?.help ?? null;
  const { session, said } = useKeptFitting(profile, chance, help);
  useStore(session);
  useKeptJobs(session, FittingNotes);
  const isRead = useSelector(session.chart, stateOf) === "declared";
  const panels = useFoundFocus(isRead);
  return (
    <div className="fitting-work">
      <div className="setup justify-start px-edge pt-4">
        <LockChoice
          locks={SHIPPED_PROFILES}
          lock={profile}
          onLock={(one) => location.assign(`#/fitting?profile=${one.id}&help=${session.help}`)}
        />
        <HelpChoice help={session.help} onHelp={(help) => takeHelp(session, help)} offers={HELPS} />
        <Button onClick={() => session.again()}>Start again</Button>
      </div>
      {said !== null && <Notice className="mx-edge my-3">{said}</Notice>}
      <div className={`${isRead ? "" : "fitting-scene"} grid gap-3 px-edge py-3 bg-paper phone:gap-1 phone:py-2`}>
        <TurnedSection work={isRead ? looked(session) : session} />
        {!isRead && <NextStepLine session={session} />}
        <Gauges session={session} help={session.help} />
      </div>
      <div ref={panels} className="workplace-panels">
        {isRead ? <FitDebrief session={session} /> : <PartsTray session={session} />}
      </div>
      <div>
        <Checks session={session} isOnce={false} />
        {!isRead && <OwnReckoning session={session} />}
        <Cautions cautions={CAUTIONS} source={CAUTION_SOURCE} />
        <div className="panel">
          <SizesNote profile={profile} />
          <HeightNote profile={profile} />
        </div>
      </div>
    </div>
  );
}
