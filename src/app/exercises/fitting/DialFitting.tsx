import { useSelector } from "@xstate/react";
import { useMemo } from "react";
import type { Help } from "../../../dialing/advice";
import { drawDoor } from "../../../fitting/doorToFit";
import { nextStep } from "../../../fitting/teaching/nextStep";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import type { Chance } from "../../../statistics/chance";
import { HelpChoice, type HelpOffer } from "../../hand/HelpChoice";
import { LockChoice } from "../../hand/LockChoice";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { Button } from "../../parts/controls/Button";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { useStore } from "../../parts/page/useStore";
import { Cautions } from "../handover/parts/Cautions";
import { Checks } from "./Checks";
import { FitDebrief } from "./FitDebrief";
import { CAUTION_SOURCE, CAUTIONS } from "./fittingCautions";
import { FittingNotes } from "./fittingNotes";
import { FittingSession } from "./fittingSession";
import { Gauges } from "./Gauges";
import { nextStepWords } from "./nextStepWords";
import { PartsTray } from "./PartsTray";
import { SectionDrawing } from "./SectionDrawing";
import { SizesNote } from "./SizesNote";
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
    <p className="w-full max-w-[640px] min-h-[2.7em] text-small">
      <strong>Next: {say}</strong> {why}
    </p>
  );
}

/** Fitting: ring, dial, spindle and key, in any order; what comes of it shows in the checks and in the debrief. */
export function DialFitting({ query, chance }: DialFittingProps) {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? SHIPPED_PROFILES[0];
  const asked = HELPS.find(({ help }) => help === query.get("help"))?.help ?? "full";
  const session = useStore(
    useMemo(() => new FittingSession(profile, chance, drawDoor(profile, chance), asked), [profile, chance, asked]),
  );
  useKeptJobs(session, FittingNotes);
  const isRead = useSelector(session.chart, stateOf) === "declared";
  return (
    <div className="fitting-work">
      <div className="setup px-edge pt-4">
        <LockChoice
          locks={SHIPPED_PROFILES}
          lock={profile}
          onLock={({ id }) => location.assign(`#/fitting?profile=${id}&help=${session.help}`)}
        />
        <HelpChoice help={session.help} onHelp={(help) => takeHelp(session, help)} offers={HELPS} />
        <Button onClick={() => session.again()}>Start again</Button>
      </div>
      <div className="fitting-scene grid justify-items-center gap-3 px-edge py-3 bg-paper phone:gap-1 phone:py-2">
        <SectionDrawing assembly={session.assembly} lock={session.lock} />
        <Gauges session={session} help={session.help} />
        {!isRead && <NextStepLine session={session} />}
      </div>
      <div className="workplace-panels">
        {isRead ? <FitDebrief session={session} /> : <PartsTray session={session} />}
      </div>
      <div>
        <Checks session={session} isOnce={false} />
        <Cautions cautions={CAUTIONS} source={CAUTION_SOURCE} />
        <div className="panel">
          <SizesNote profile={profile} />
        </div>
      </div>
    </div>
  );
}
