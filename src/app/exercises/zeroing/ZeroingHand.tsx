import { useSelector } from "@xstate/react";
import { readingText } from "../../../dialing/words";
import { reading, type Turn } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { spokenReading } from "../../hand/dial/spokenReading";
import { againAct, type HandAct, newAct, stopAct } from "../../hand/handActs";
import type { HeldDial } from "../../hand/heldDial";
import { LockInHand } from "../../hand/LockInHand";
import { memoryOf, stateOf } from "../../parts/page/ofChart";
import { signedText } from "../../parts/signedText";
import { Magnifier } from "./Magnifier";
import { RingControls } from "./ring/RingControls";
import { RingGrip } from "./ring/RingGrip";
import { RingLoupe } from "./ring/RingLoupe";
import { Sockets } from "./Sockets";
import type { ZeroingSession } from "./session/zeroingSession";

interface ZeroingHandProps {
  readonly session: ZeroingSession;
  readonly profile: Profile;
  /** What is turned, where that is not the session alone. */
  readonly held?: HeldDial;
  /** Whether the loupe and the reading in the hub are to be seen. */
  readonly hasLoupe: boolean;
  /** Which way to point, or null. */
  readonly pointTo: Turn | null;
  /** The one thing to do besides turning: record a stop; null where there is none. */
  readonly onReading: (() => void) | null;
  /** Begins again, with this lock or another; null where there is no second chance. */
  readonly onRestart: ((isNew: boolean) => void) | null;
}

/** The reading at the index as drawn, unwrapped into words for a screen reader: close to zero its side is told. */
function spokenSeen(session: ZeroingSession, profile: Profile): string {
  const { seen, seenDeviation, perTurn } = session.lock;
  if (Math.abs(seenDeviation) > 3) return spokenReading(readingText(reading(seen, perTurn), profile));
  const size = Math.abs(seenDeviation).toFixed(1);
  if (size === "0.0") return "on zero";
  return `${spokenReading(size)} ${seenDeviation > 0 ? "left" : "right"} of zero`;
}

/** How a stop of a dial in the hand is judged. */
const OWN_INDEX =
  "The index of your own dial is the index of this lock’s ring, with the error that the ring was clamped with. Stop where your own dial shows 0: how far it is off 0 at its own index is judged, and not what the picture of the dial lets you read.";

const actsOf = ({ session, onReading, onRestart }: ZeroingHandProps): readonly HandAct[] => {
  const isNear = () => Math.abs(session.lock.seenDeviation) <= session.setup.rules.captureWindow;
  const stop = stopAct(() => onReading?.(), onReading === null, { isNear, says: OWN_INDEX });
  if (onRestart === null) return [stop];
  return [
    againAct(() => onRestart(false), "begins again with this lock"),
    newAct("New lock", "takes another", () => onRestart(true)),
    stop,
  ];
};

/** The dial to be zeroed, its sockets, the loupe and the controls beside it. */
export function ZeroingHand(props: ZeroingHandProps) {
  const { session, profile, hasLoupe, pointTo } = props;
  const { lock, setup } = session;
  const state = useSelector(session.chart, stateOf);
  const memory = useSelector(session.chart, memoryOf);
  const isLoose = state === "ringLoose";
  const glass = isLoose ? <RingLoupe error={lock.indexError} /> : <Magnifier seen={lock.seen} profile={profile} />;
  return (
    <>
      {isLoose && <RingControls session={session} />}
      <LockInHand
        profile={profile}
        dial={lock.dial}
        ringTurn={lock.indexError}
        held={props.held ?? session}
        surround={58}
        spoken={spokenSeen(session, profile)}
        digits={hasLoupe ? "always" : "none"}
        note={`${signedText(lock.seenDeviation)} off zero`}
        pointTo={pointTo}
        acts={actsOf(props)}
        hasControls={!isLoose}
        loupe={hasLoupe && glass}
      >
        <path className="stroke-ink" strokeWidth={2.4} d="M 0 -256 V -276" />
        {isLoose && <RingGrip session={session} />}
        <Sockets
          accepted={memory.accepted}
          wanted={memory.wanted}
          asked={session.asked}
          isSet={state === "zeroSet"}
          order={setup.rules.order}
          last={memory.last}
        />
      </LockInHand>
    </>
  );
}
