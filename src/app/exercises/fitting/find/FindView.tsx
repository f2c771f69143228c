import { useSelector } from "@xstate/react";
import { useMemo, useState } from "react";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import type { Chance } from "../../../../statistics/chance";
import { HelpChoice } from "../../../hand/HelpChoice";
import { LockChoice } from "../../../hand/LockChoice";
import { useKeptJobs } from "../../../keeping/useKeptJobs";
import { useKeptWork } from "../../../keeping/useKeptWork";
import { Button } from "../../../parts/controls/Button";
import { Notice } from "../../../parts/Notice";
import { stateOf } from "../../../parts/page/ofChart";
import { useFollowedBy } from "../../../parts/page/useFollowedBy";
import { useFoundFocus } from "../../../parts/page/useFoundFocus";
import { useStore } from "../../../parts/page/useStore";
import { Cautions } from "../../handover/parts/Cautions";
import { SizesNote } from "../seen/SizesNote";
import { AnswerForm } from "./AnswerForm";
import { FindDebrief } from "./FindDebrief";
import { FindHelp } from "./FindHelp";
import { FitChecks } from "./FitChecks";
import { FIND_CAUTIONS } from "./findWords";
import { InspectionNotes } from "./inspectionNotes";
import type { InspectionSession } from "./inspectionSession";
import { firstInspection, INSPECTION_KEY, INSPECTION_WORK, isJudging, keptInspectionOf } from "./keptInspection";
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

/** The address follows the lock, so that a reload goes on with it. */
const addressOf = ({ profile, help, seed }: InspectionSession) =>
  `#/fitting?view=find&profile=${profile.id}&help=${help}&seed=${seed}`;

/** A lock that somebody else has fitted: check it, and name what is wrong with it. */
export function FindView({ query, chance }: FindViewProps) {
  const begun = useMemo(() => firstInspection(query, chance, performance.now()), [query, chance]);
  const session = useStore(begun.session);
  const said = useKeptWork({
    ...{ session, problem: begun.problem, key: INSPECTION_KEY, kind: INSPECTION_WORK },
    keptNow: () => keptInspectionOf(session, performance.now()),
    isUnderWay: isJudging,
  });
  useKeptJobs(session, InspectionNotes);
  const [first] = useState(session.lock);
  useFollowedBy(session.lock === first ? null : addressOf(session));
  const isNamed = useSelector(session.chart, stateOf) === "named";
  const place = useFoundFocus(isNamed);
  return (
    <div className="workplace">
      <div ref={isNamed ? undefined : place} className="workplace-hand">
        {said !== null && <Notice>{said}</Notice>}
        <div className="setup justify-start">
          <LockChoice
            locks={SHIPPED_PROFILES}
            lock={session.profile}
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
        <div className="panel">
          <SizesNote profile={session.profile} />
        </div>
      </div>
    </div>
  );
}
