import { type CSSProperties, type KeyboardEvent, type ReactNode, useId } from "react";
import { DRAG_LAG } from "../../../dialing/hand/dialFeel";
import { type Graduations, type Milliseconds, reading, type Turn } from "../../../lock/dial";
import { DialFace } from "./DialFace";
import { dialRotation } from "./dialGeometry";
import { Hub, type HubText } from "./Hub";
import { Knob } from "./Knob";
import { OpenRing } from "./OpenRing";
import { TurnArrow } from "./TurnArrow";
import { useHands } from "./useHands";
import { useTurningKeys } from "./useTurningKeys";
import { useWheel } from "./useWheel";
import { WindUp } from "./WindUp";
import "./dial.css";

interface DialProps {
  /** Unwrapped graduations. */
  readonly position: Graduations;
  readonly graduations: number;
  readonly numbersIncrease: Turn;
  /** What a screen reader says the dial stands at. */
  readonly spoken: string;
  /** Which way to turn, shown as an arrow; null shows none. */
  readonly pointTo: Turn | null;
  /** Text in the hub, if any. */
  readonly hub: HubText | null;
  /** Whether the lock has just opened and its bolt is back: the ring and the hub say so. */
  readonly isOpen?: boolean;
  /** Id of the text that says which keys do what. */
  readonly describedBy: string;
  readonly onTurn: (by: Graduations, at: Milliseconds) => void;
  /** A key that is not the dial's own. */
  readonly onOtherKey?: (event: KeyboardEvent) => void;
  /** How far the ring with the opening index stands off the true place, graduations, left positive. */
  readonly ringTurn?: Graduations;
  /** How far the hand is ahead of a heavy dial, graduations, left positive. */
  readonly windUp?: Graduations;
  /** A second index on the ring, where the lock has one; graduations left of the opening index. */
  readonly changingIndex?: Graduations | undefined;
  /** Room round the ring for `children`, in the drawing's units. */
  readonly surround?: number;
  /** Drawn round the ring, in the drawing's own frame: the middle of the dial is 0 0, the ring's rim at 253. */
  readonly children?: ReactNode;
}

/** A step that a heavy dial did not follow changes nothing to read: it is told. */
const spokenOf = ({ spoken, windUp = 0 }: DialProps) =>
  Math.abs(windUp) > DRAG_LAG + 0.05 ? `${spoken}, the dial sticks` : spoken;

/** The second index: hollow and flat, so that nobody takes it for the opening index. */
function ChangingIndex({ turned, arc }: { readonly turned: string; readonly arc: string }) {
  return (
    <g transform={turned}>
      <path className="dial-changing-index" d="M0 -226 L-7 -247 H7 Z M-11 -251 H11" />
      <text className="dial-caption">
        <textPath href={`#${arc}`} startOffset="0">
          changing index
        </textPath>
      </text>
    </g>
  );
}

const OPEN: HubText = { reading: "Open", note: "bolt back" };

/** A dial one turns by hand, finger, pen, wheel or key. Where it stands comes from above; it holds only the grip. */
export function Dial(props: DialProps) {
  const { position, graduations, numbersIncrease, hub, isOpen = false, onTurn } = props;
  const shade = useId();
  const dial = useWheel(onTurn);
  const hands = useHands(graduations, onTurn);
  const keys = useTurningKeys(position, graduations, onTurn);
  const rotation = dialRotation(position, graduations);
  const reach = 256 + (props.surround ?? 0);
  const ringTurned = `rotate(${dialRotation(props.ringTurn ?? 0, graduations)})`;
  const turned = `rotate(${rotation})`;

  return (
    <div
      ref={dial}
      className={isOpen ? "dial dial-is-open" : "dial"}
      style={{ "--dial-units": 2 * reach } as CSSProperties}
      role="slider"
      tabIndex={0}
      aria-label="Dial"
      aria-valuemin={0}
      aria-valuemax={graduations}
      aria-valuenow={Math.round(reading(position - (props.ringTurn ?? 0), graduations) * 10) / 10}
      aria-valuetext={spokenOf(props)}
      aria-describedby={props.describedBy}
      onKeyDown={(event) => keys.onKeyDown(event) || props.onOtherKey?.(event)}
      onKeyUp={keys.onKeyUp}
      onBlur={keys.letGo}
      {...hands}
    >
      <svg viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`} aria-hidden="true">
        <defs>
          {/* The light stays where it is while the knob turns under it. */}
          <linearGradient id={shade} x1="0" y1="0" x2="0" y2="1" gradientTransform={`rotate(${-rotation} 0.5 0.5)`}>
            <stop offset="0" className="dial-light" />
            <stop offset="1" className="dial-shade" />
          </linearGradient>
          {/* The caption is engraved along the ring, beside the index. */}
          <path id={`${shade}-arc`} d="M 16 -234.5 A 235 235 0 0 1 235 0" />
        </defs>
        <circle className="dial-ring" r={253} />
        {isOpen && <OpenRing />}
        <circle className="dial-plate" r={226} />
        <text className="dial-caption" transform={ringTurned}>
          <textPath href={`#${shade}-arc`} startOffset="0">
            opening index
          </textPath>
        </text>
        {props.changingIndex !== undefined && (
          <ChangingIndex
            turned={`rotate(${dialRotation(props.changingIndex + (props.ringTurn ?? 0), graduations)})`}
            arc={`${shade}-arc`}
          />
        )}
        <g transform={turned}>
          <DialFace graduations={graduations} numbersIncrease={numbersIncrease} />
          <circle className="dial-groove" r={146} />
        </g>
        <WindUp windUp={props.windUp ?? 0} graduations={graduations} />
        {props.pointTo !== null && <TurnArrow turn={props.pointTo} />}
        <ellipse className="dial-cast" cy={7} rx={120} ry={120} />
        <g transform={turned} style={{ fill: `url(#${shade})` }}>
          <Knob />
        </g>
        <circle className="dial-hub" r={80} />
        <Hub text={isOpen ? OPEN : hub} />
        <path className="dial-index" transform={ringTurned} d="M0 -219 L-8.5 -247 H8.5 Z" />
        {props.children}
      </svg>
    </div>
  );
}
