import { RunWork } from "../../exercises/handover/run/RunWork";
import { useStore } from "../../parts/page/useStore";
import type { HandoverTry } from "../tries/handoverTry";

interface HandoverStationProps {
  readonly one: HandoverTry;
}

/** The lock under the hand, with everything one may do about the door; what follows is told at the end of the sitting. */
export function HandoverStationHand({ one }: HandoverStationProps) {
  return <RunWork session={useStore(one.session)} isOnce onLookBack={null} />;
}

/** Which door it is, and who is with the candidate. */
export function HandoverPanels({ one }: HandoverStationProps) {
  const { recorded, setup } = one.session;
  const { door, lock, second } = recorded.scene;
  return (
    <section className="panel" aria-label="Lock on the door">
      <h2 className="mb-3">
        {door} <small>{lock}</small>
      </h2>
      <p className="text-soft">
        {second} is the second person. {setup.isHandsOff ? "A simulated hand dials." : "You dial."} Your signature ends
        the try.
      </p>
    </section>
  );
}
