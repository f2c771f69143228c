import { useSelector } from "@xstate/react";
import { useMemo } from "react";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import type { Chance } from "../../../statistics/chance";
import { LockChoice } from "../../hand/LockChoice";
import { useKeptJobs } from "../../keeping/useKeptJobs";
import { Button } from "../../parts/controls/Button";
import { LinkRow } from "../../parts/LinkRow";
import { fetchedLater } from "../../parts/page/fetchedLater";
import { stateOf } from "../../parts/page/ofChart";
import { useStore } from "../../parts/page/useStore";
import { Cautions } from "../handover/parts/Cautions";
import { Checks } from "./Checks";
import { FitDebrief } from "./FitDebrief";
import { FittingNotes } from "./fittingNotes";
import { FittingSession } from "./fittingSession";
import { CAUTIONS } from "./fittingWords";
import { Gauges } from "./Gauges";
import { PartsTray } from "./PartsTray";
import { SectionDrawing } from "./SectionDrawing";
import { SizesNote } from "./SizesNote";
import "../../parts/workplace.css";

interface FittingScreenProps {
  readonly query: URLSearchParams;
  readonly chance: Chance;
}

const ServiceView = fetchedLater(async () => (await import("../service/ServiceView")).ServiceView, null);

const LINKS = [
  { key: "fit", label: "Fit the dial", href: "#/fitting" },
  { key: "service", label: "Service visit", href: "#/fitting?view=service" },
];

/** Fitting a lock, and the visit to one that was fitted years ago. */
export function FittingScreen(props: FittingScreenProps) {
  const isService = props.query.get("view") === "service";
  return (
    <main>
      <h1 className="visually-hidden">Fitting</h1>
      <LinkRow
        className="tabs px-edge"
        label="Parts of fitting"
        links={LINKS}
        current={isService ? "service" : "fit"}
      />
      {isService ? <ServiceView {...props} /> : <DialFitting {...props} />}
    </main>
  );
}

/** Fitting: ring, dial, spindle and key, in any order; what comes of it shows in the checks and in the debrief. */
function DialFitting({ query, chance }: FittingScreenProps) {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === query.get("profile")) ?? SHIPPED_PROFILES[0];
  const session = useStore(useMemo(() => new FittingSession(profile, chance), [profile, chance]));
  useKeptJobs(session, FittingNotes);
  const isRead = useSelector(session.chart, stateOf) === "declared";
  return (
    <div className="workplace">
      <div className="workplace-hand">
        <div className="setup">
          <LockChoice
            locks={SHIPPED_PROFILES}
            lock={profile}
            onLock={({ id }) => location.assign(`#/fitting?profile=${id}`)}
          />
          <Button onClick={() => session.again()}>Start again</Button>
        </div>
        <SectionDrawing assembly={session.assembly} lock={session.lock} />
        <SizesNote profile={profile} />
        <Gauges session={session} help="counts" />
        {isRead ? <FitDebrief session={session} /> : <Checks session={session} isOnce={false} />}
      </div>
      <div className="workplace-panels">
        <PartsTray session={session} />
        <Cautions cautions={CAUTIONS} source="common practice, no source" />
      </div>
    </div>
  );
}
