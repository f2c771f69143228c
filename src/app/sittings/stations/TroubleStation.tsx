import { useSelector } from "@xstate/react";
import { CardPanel } from "../../exercises/handover/trouble/CardPanel";
import { Instruments } from "../../exercises/handover/trouble/Instruments";
import { NamedPanel } from "../../exercises/handover/trouble/NamedPanel";
import { NameForm } from "../../exercises/handover/trouble/NameForm";
import { SeenTable } from "../../exercises/handover/trouble/SeenTable";
import { TroubleHand } from "../../exercises/handover/trouble/TroubleHand";
import { stateOf } from "../../parts/page/ofChart";
import { useStore } from "../../parts/page/useStore";
import type { TroubleTry } from "../tries/troubleTry";
import "../../exercises/handover/trouble/trouble.css";

interface TroubleStationProps {
  readonly one: TroubleTry;
}

/** The lock in trouble under the own hand, and all that was seen of it. */
export function TroubleStationHand({ one }: TroubleStationProps) {
  const session = useStore(one.session);
  return (
    <div className="trouble-hand grid justify-items-center gap-4 w-full px-edge py-4">
      <TroubleHand session={session} isOnce />
      <SeenTable card={session.task.card} log={session.bench.log} />
    </div>
  );
}

/** Card, instruments and the form to name it; what it was is not told before the sitting's end. */
export function TroublePanels({ one, onStand }: TroubleStationProps & { readonly onStand: () => void }) {
  const session = useStore(one.session);
  const { task } = session;
  const state = useSelector(session.chart, stateOf);
  return (
    <div className="min-w-0 self-stretch bg-plate">
      <CardPanel card={task.card} />
      <Instruments session={session} />
      {/* Kept while a diagnosis stands: whoever takes it back finds the form as it was. */}
      <div hidden={state !== "measuring"}>
        <NameForm card={task.card} onName={(named) => session.name(named, performance.now())} />
      </div>
      {state === "named" && (
        <NamedPanel
          session={session}
          note="Once you name it, this try ends. You see whether it is right at the end of the sitting."
          label="Confirm it"
          onStand={onStand}
        />
      )}
    </div>
  );
}
