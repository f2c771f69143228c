import { useSelector } from "@xstate/react";
import { useMemo } from "react";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { HELP_LEVELS } from "../../../../records/attemptRecord";
import type { Chance } from "../../../../statistics/chance";
import { HelpChoice } from "../../../hand/HelpChoice";
import { LockChoice } from "../../../hand/LockChoice";
import { useKeptJobs } from "../../../keeping/useKeptJobs";
import { Button } from "../../../parts/controls/Button";
import { stateOf } from "../../../parts/page/ofChart";
import { useFoundFocus } from "../../../parts/page/useFoundFocus";
import { useStore } from "../../../parts/page/useStore";
import { Cautions } from "../../handover/parts/Cautions";
import { AnswerForm } from "./AnswerForm";
import { FindDebrief } from "./FindDebrief";
import { FindHelp } from "./FindHelp";
import { FitChecks } from "./FitChecks";
import { FIND_CAUTIONS } from "./findWords";
import { InspectionNotes } from "./inspectionNotes";
import { InspectionSession } from "./inspectionSession";
import "../../../parts/workplace.css";

const HELPS = [
  { help: "full", label: "Full", title: "Full help: a good fit in section, its limits, and how many checks you made" },
  { help: "counts", label: "Counts", title: "Counts: a good fit in section, and how many checks you made" },
  { help: "silent", label: "Silent", title: "Silent: the checks alone" },
] as const;

interface FindViewProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

/** A lock that somebody else has fitted: check it, and name what is wrong with it. */
export function FindView({ query, chance }: FindViewProps) {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? SHIPPED_PROFILES[0];
  const help = HELP_LEVELS.find((one) => one === query.get("help")) ?? "full";
  const session = useStore(useMemo(() => new InspectionSession(profile, help, chance), [profile, help, chance]));
  useKeptJobs(session, InspectionNotes);
  const isNamed = useSelector(session.chart, stateOf) === "named";
  const place = useFoundFocus(isNamed);
  return (
    <div className="workplace">
      <div ref={isNamed ? undefined : place} className="workplace-hand">
        <div className="setup justify-start">
          <LockChoice
            locks={SHIPPED_PROFILES}
            lock={profile}
            onLock={({ id }) => location.assign(`#/fitting?view=find&profile=${id}&help=${session.help}`)}
          />
          <HelpChoice help={session.help} onHelp={(one) => session.setHelp(one)} offers={HELPS} />
          <Button onClick={() => session.again()}>Another lock</Button>
        </div>
        <FindHelp session={session} />
        <FitChecks session={session} />
      </div>
      <div ref={isNamed ? place : undefined} className="workplace-panels">
        {isNamed ? <FindDebrief session={session} /> : <AnswerForm session={session} isOnce={false} />}
        <Cautions cautions={FIND_CAUTIONS} source="common practice, no source" />
      </div>
    </div>
  );
}
