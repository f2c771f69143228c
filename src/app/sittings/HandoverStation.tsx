import { RunDoor, RunHand } from "../handover/run/RunWork";
import { ToldLine } from "../handover/run/ToldLine";
import type { HandoverTry } from "./handoverTry";
import { useStore } from "./useSitting";
import "../handover/run/run.css";

interface HandoverStationProps {
  readonly one: HandoverTry;
}

/** The door with everything one may do about it; what follows from that is told at the end of the sitting. */
export function HandoverStationHand({ one }: HandoverStationProps) {
  const session = useStore(one.session);
  return (
    <div className="sitting-run">
      <ToldLine told={session.told} isOnce />
      <RunDoor session={session} onLookBack={null} />
    </div>
  );
}

/** The lock on the door, under the own hand or a simulated one. */
export function HandoverPanels({ one }: HandoverStationProps) {
  const session = useStore(one.session);
  const { door, lock, second } = session.recorded.scene;
  return (
    <section className="panel" aria-label="Lock on the door">
      <h2>
        {door} <small>{lock}</small>
      </h2>
      <p className="sitting-soft">
        {second} is the second person. {session.setup.isHandsOff ? "A simulated hand dials." : "You dial."} Your
        signature ends the try.
      </p>
      <RunHand session={session} />
    </section>
  );
}
