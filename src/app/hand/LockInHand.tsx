import { type ReactNode, useId, useRef } from "react";
import type { Help } from "../../dialing/advice";
import type { HandledLock } from "../../dialing/attempt";
import { readingText } from "../../dialing/words";
import { type Graduations, type Position, type Reading, reading, type Turn } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import { ActButton } from "./ActButton";
import type { Bolt } from "./bolt";
import { Dial } from "./dial/Dial";
import type { HubText } from "./dial/Hub";
import { spokenReading } from "./dial/spokenReading";
import { type HandAct, takeKey, withDigits } from "./handActs";
import type { HeldDial } from "./heldDial";
import type { HubStrength } from "./hubReading";
import { keysHelp } from "./keysHelp";
import type { DrawnDial, SourceControlsProps, TurnDial } from "./sources/dialSource";
import { DIAL_SOURCES } from "./sources/dialSources";
import { useSources } from "./sources/useSources";
import { lastTurn, spokenHand, spokenWindUp } from "./spoken";
import { useRunOn } from "./timePasses";
import { type Digits, useDigits } from "./useDigits";
import { useLockSounds } from "./useLockSounds";
import "./hand.css";

/** What an exercise says of the lock under the hand. Graduations are left positive. */
interface LockInHandProps {
  readonly profile: Profile;
  /** Where the dial stands; where its index must not be seen, what that reads. */
  readonly dial: Position | Reading;
  /** What takes the turning: the exercise's session. */
  readonly held: HeldDial;
  /** How far the ring with the opening index stands off the true place. */
  readonly ringTurn?: Graduations;
  /** What is read, where that is not at the opening index; unwrapped. */
  readonly seen?: Reading;
  /** Whether the ring shows the changing index of a lock that has one. */
  readonly hasChangingIndex?: boolean;
  readonly bolt?: Bolt;
  /** Whether the lever nose is in the cam, where one may hear it. */
  readonly isCoupled?: boolean;
  /** The lock on which a combination is dialed, for what its hand has done so far; and how much is told of it. */
  readonly dialed?: HandledLock;
  readonly help?: Help;
  /** What is spoken in the place of the reading. */
  readonly spoken?: string;
  /** What is spoken beside it. */
  readonly said?: readonly string[];
  readonly digits: Digits;
  /** The small line in the hub, in the place of what the hand does. */
  readonly note?: string | null;
  /** Which way to turn, shown as an arrow. */
  readonly pointTo?: Turn | null;
  /** What there is to do beside turning. */
  readonly acts?: readonly HandAct[];
  /** What else to say of the keys, a sentence each. */
  readonly keysMore?: readonly string[];
  /** Whether buttons below the dial turn it. */
  readonly hasControls?: boolean;
  /** Whether what is shown is long past: nothing is heard of it, and no hand pulls. */
  readonly isReplay?: boolean;
  /** Beside the dial, to see something near. */
  readonly loupe?: ReactNode;
  /** On the other side of the dial. */
  readonly window?: ReactNode;
  /** Room round the ring for `children`, in the drawing's units. */
  readonly surround?: number;
  /** Drawn round the ring: the middle of the dial is 0 0, the ring's rim at 253. */
  readonly children?: ReactNode;
}

const NO_ACTS: readonly HandAct[] = [];

const handNote = (dialed: HandledLock | undefined): string => {
  if (dialed === undefined) return "at the index";
  const turn = lastTurn(dialed);
  return turn === null ? "at rest" : `turning ${turn}`;
};

/** What is written in the hub: an opening whatever the help, else the digits where there are any. */
function hubText(
  { bolt, digits, note, dialed }: LockInHandProps,
  shown: string,
  strength: HubStrength,
): HubText | null {
  if (bolt === "back") return { reading: "Open", note: note ?? "bolt back" };
  if (digits === "none") return null;
  return {
    reading: strength === "hidden" ? "" : shown,
    note: note ?? handNote(dialed),
    isFaint: strength === "faint",
  };
}

/** What a screen reader says the dial stands at: "thirty-one point two, second arrival, turning right". */
function spokenOf(
  { spoken, dialed, help = "full", said = [], held, isReplay = false }: LockInHandProps,
  shown: string,
): string {
  const ofHand = dialed === undefined ? [] : spokenHand(dialed, help);
  return [spoken ?? spokenReading(shown), ...ofHand, ...said, ...(isReplay ? [] : spokenWindUp(held.windUp))].join(
    ", ",
  );
}

const changingIndexOf = ({ profile, hasChangingIndex = false }: LockInHandProps) =>
  hasChangingIndex && profile.kind === "wheel-pack" ? profile.changing?.index : undefined;

const CORNERS: readonly HandAct["place"][] = ["top", "left", "right"];

interface ActButtonsProps {
  readonly acts: readonly HandAct[];
  readonly places: readonly HandAct["place"][];
}

function ActButtons({ acts, places }: ActButtonsProps) {
  return acts.filter(({ place }) => places.includes(place)).map((act) => <ActButton key={act.key} act={act} />);
}

/** Below the dial: what sources are worked with, and the main thing to do. */
function Controls({ perTurn, turn, acts }: SourceControlsProps & Pick<ActButtonsProps, "acts">) {
  return (
    <div className="hand-controls flex flex-wrap justify-center gap-y-3 gap-x-5">
      {DIAL_SOURCES.map(({ name, Controls: Of }) => Of && <Of key={name} perTurn={perTurn} turn={turn} />)}
      <ActButtons acts={acts} places={["below"]} />
    </div>
  );
}

/** The lock in hand: its dial, every way to turn it, and what there is to do beside that. */
export function LockInHand(props: LockInHandProps) {
  const {
    profile,
    dial,
    held,
    ringTurn = 0,
    isReplay = false,
    bolt = null,
    acts = NO_ACTS,
    hasControls = true,
  } = props;
  const { graduations } = profile;
  const place = useRef<HTMLDivElement>(null);
  const keys = useId();
  const digits = useDigits(props.digits);
  const onTurn: TurnDial = (by, at, source) => {
    if (held.noteSource(source)) held.turnBy(by, at);
  };
  const seen = props.seen ?? dial - ringTurn;
  const onDoubt: DrawnDial["onDoubt"] = (why) => held.noteDoubt(why);
  const { keepsMoves } = held;
  const drawn: DrawnDial = { position: dial, seen, acts, isReplay, keepsMoves, onDoubt };
  const turn = useSources(place, { perTurn: graduations, ...drawn, onTurn });
  useRunOn(held);
  useLockSounds({ dial, bolt, isCoupled: props.isCoupled ?? false }, isReplay);

  const shown = readingText(reading(seen, graduations), profile);
  const all = withDigits(acts, digits);
  return (
    <>
      <div className="workplace-dial relative w-[min(100%,max(640px,calc(100dvh_-_250px)))] flex justify-center phone:flex-wrap phone:gap-3">
        <Dial
          place={place}
          profile={profile}
          position={dial}
          spoken={spokenOf(props, shown)}
          pointTo={props.pointTo ?? null}
          hub={hubText(props, shown, digits.strength)}
          isOpen={bolt === "back"}
          describedBy={keys}
          ringTurn={ringTurn}
          windUp={isReplay ? 0 : held.windUp}
          changingIndex={changingIndexOf(props)}
          surround={props.surround ?? 0}
          onKeyDown={(event) => takeKey(event, all)}
        >
          {props.children}
        </Dial>
        {props.loupe && (
          <div className="hand-loupe absolute top-0 right-0 w-[148px] phone:-top-3 phone:-right-3 phone:w-[104px]">
            {props.loupe}
          </div>
        )}
        {props.window && (
          <div className="hand-loupe absolute top-0 right-0 w-[148px] phone:w-[104px] right-auto left-0">
            {props.window}
          </div>
        )}
        <p id={keys} className="visually-hidden">
          {keysHelp(all, props.keysMore).join(" ")}
        </p>
        <ActButtons acts={all} places={CORNERS} />
      </div>
      {hasControls && <Controls perTurn={graduations} turn={turn} acts={all} />}
    </>
  );
}
