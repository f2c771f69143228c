import { useSelector } from "@xstate/react";
import { useEffect } from "react";
import type { ZeroingState } from "../../../../zeroing/zeroingMachine";
import { Button } from "../../../parts/controls/Button";
import { useStore } from "../../../parts/page/useStore";
import { RingControls } from "../../zeroing/ring/RingControls";
import { RingGrip } from "../../zeroing/ring/RingGrip";
import { RingLoupe } from "../../zeroing/ring/RingLoupe";
import { RingWords, SetZeroPanel } from "../../zeroing/SetZeroPanel";
import { ZeroingHand } from "../../zeroing/ZeroingHand";
import "../../zeroing/zeroing.css";
import { DoorHand } from "./DoorHand";
import { TRUE_RING } from "./session/doorZeroing";
import type { HandoverSession } from "./session/handoverSession";
import { takeZeroReading, watchZeroing } from "./session/ringWork";
import { showDial } from "./session/showDial";

const isRingLoose = ({ value }: { readonly value: ZeroingState }) => value === "ringLoose";

/** The ring of a wheel pack: turned by hand until its index stands true, and clamped. */
function PackRing({ session }: { readonly session: HandoverSession }) {
  const { chart, lock } = session.zeroing;
  const isLoose = useSelector(chart, isRingLoose);
  const off = Math.abs(lock.indexError);
  if (isLoose) return <RingWords session={session.zeroing} />;
  return (
    <>
      <p>
        The ring is clamped, {off.toFixed(1)} graduations off the line.{" "}
        {off <= TRUE_RING ? "It is aligned." : "It is not aligned: loosen it and turn it again."}
      </p>
      <Button onClick={() => session.zeroing.loosenRing()}>Loosen the ring</Button>
    </>
  );
}

/** The dial under a hand that works at ring and zero. */
export function RingHand({ session }: { readonly session: HandoverSession }) {
  const zeroing = useStore(session.zeroing);
  const isLoose = useSelector(zeroing.chart, isRingLoose);
  const { profile } = session.setup;
  if (profile.kind !== "dial-encoder") {
    return (
      <DoorHand
        session={session}
        grip={isLoose && <RingGrip session={zeroing} />}
        loupe={<RingLoupe error={zeroing.lock.indexError} />}
        controls={isLoose && <RingControls session={zeroing} />}
      />
    );
  }
  return (
    <ZeroingHand
      session={zeroing}
      profile={profile}
      hasLoupe
      pointTo={zeroing.asked}
      onReading={zeroing.asked === null ? null : () => takeZeroReading(session, performance.now())}
      onRestart={null}
    />
  );
}

/** Ring and zero by hand; what they come to is taken into the run. */
export function RingPanel({ session }: { readonly session: HandoverSession }) {
  const zeroing = useStore(session.zeroing);
  useEffect(() => zeroing.subscribe(() => watchZeroing(session, performance.now())), [zeroing, session]);
  const { asked } = zeroing;
  // A side that opens wants the dial, which may have been scrolled away from ring and clamp.
  useEffect(() => {
    if (asked !== null) showDial();
  }, [asked]);
  const isEncoder = session.setup.profile.kind === "dial-encoder";
  return (
    <>
      {isEncoder ? <SetZeroPanel session={zeroing} now={performance.now()} /> : <PackRing session={session} />}
      <Button onClick={() => session.show("dial")}>Back to the door</Button>
    </>
  );
}
