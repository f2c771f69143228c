import { useSelector } from "@xstate/react";
import { useMemo } from "react";
import { useHandStore } from "../../../hand/useHandStore";
import { useKeptJobs } from "../../../keeping/useKeptJobs";
import { stateOf } from "../../../parts/page/ofChart";
import { Cautions } from "../parts/Cautions";
import type { HandoverViewProps } from "../parts/handoverViewProps";
import { CardPanel } from "./CardPanel";
import { Debrief } from "./Debrief";
import { Instruments } from "./Instruments";
import { NamedPanel } from "./NamedPanel";
import { NameForm } from "./NameForm";
import { SeenTable } from "./SeenTable";
import { TroubleHand } from "./TroubleHand";
import { TroubleSetupBar } from "./TroubleSetupBar";
import { TroubleNotes } from "./troubleNotes";
import { TroubleSession } from "./troubleSession";
import { setupOf } from "./troubleSetup";
import "./trouble.css";

const CAUTIONS = [
  "Work with the door open, on a lock whose combination you know: it may refuse at any try.",
  "The maker's written instructions decide what may be adjusted. Local codes and your license decide what you may do.",
];

/** A lock with one hidden condition, to be dialed, measured and named; its combination is known and its door open. */
export function TroubleView(props: HandoverViewProps) {
  // Another address is another exercise, with forms of its own.
  return <TroubleExercise key={`${props.query}`} {...props} />;
}

function TroubleExercise({ query, chance }: HandoverViewProps) {
  const session = useHandStore(useMemo(() => new TroubleSession(setupOf(query, chance), chance), [query, chance]));
  useKeptJobs(session, TroubleNotes);
  const { task, bench } = session;
  const state = useSelector(session.chart, stateOf);
  return (
    <>
      <TroubleSetupBar session={session} />
      <div className="trouble grid grid-cols-[minmax(0,1fr)_minmax(0,1fr)] items-start border border-hair rounded-corner max-[900px]:grid-cols-[minmax(0,1fr)]">
        <div className="trouble-hand grid justify-items-center gap-4 px-edge py-4">
          <TroubleHand session={session} isOnce={false} />
          <SeenTable card={task.card} log={bench.log} />
        </div>
        <div className="min-w-0 self-stretch bg-plate border-l border-l-hair max-[900px]:border-t max-[900px]:border-t-hair max-[900px]:border-l-0">
          {state === "told" ? (
            <Debrief session={session} />
          ) : (
            <>
              <CardPanel card={task.card} />
              <Instruments session={session} />
            </>
          )}
          {/* Kept while a diagnosis stands: whoever takes it back finds the form as it was. */}
          <div hidden={state !== "measuring"}>
            <NameForm key={session.round} card={task.card} onName={(named) => session.name(named, performance.now())} />
          </div>
          {state === "named" && (
            <NamedPanel
              session={session}
              note="After the answer is shown, you can no longer measure this lock."
              label="Show the answer"
              onStand={() => session.tell()}
            />
          )}
          <Cautions cautions={CAUTIONS} source="common practice, no source" />
        </div>
      </div>
    </>
  );
}
