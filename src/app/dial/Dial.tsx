import { type KeyboardEvent, type PointerEvent, type ReactNode, useEffect, useId, useRef } from "react";
import { DRAG_LAG } from "../../dialing/dialFeel";
import { type Graduations, type Milliseconds, reading, type Turn } from "../../lock/dial";
import { DialFace } from "./DialFace";
import { dialRotation } from "./dialGeometry";
import { Grip } from "./grip";
import { Knob } from "./Knob";
import type { ScreenPoint } from "./pointerAngle";
import { TurnArrow } from "./TurnArrow";
import { useTurningKeys } from "./useTurningKeys";
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
  readonly hub: { readonly reading: string; readonly note: string } | null;
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

/** Graduations for one CSS pixel of the mouse wheel; with Shift a tenth of it. */
const PER_WHEEL_PIXEL = 0.03;

/** Pixels that one unit of a wheel event stands for, by its mode: pixels, lines, pages. */
const WHEEL_PIXELS: readonly number[] = [1, 33, 400];

/** How far a wheel event turns the dial, graduations. A wheel that only goes sideways, as with Shift, counts as well. */
function wheelTurn({ deltaX, deltaY, deltaMode, shiftKey }: WheelEvent): Graduations {
  const pixels = (deltaY === 0 ? deltaX : deltaY) * (WHEEL_PIXELS[deltaMode] ?? 1);
  return -pixels * PER_WHEEL_PIXEL * (shiftKey ? 0.1 : 1);
}

/** Turns the dial by mouse wheel or trackpad. The listener must not be passive, or the page scrolls along. */
function useWheel(onTurn: DialProps["onTurn"]) {
  const dial = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const element = dial.current;
    const turn = (event: WheelEvent) => {
      // Pinching a trackpad arrives as a wheel with Ctrl: that is the page's zoom.
      if (event.ctrlKey) return;
      event.preventDefault();
      const by = wheelTurn(event);
      if (by !== 0) onTurn(by, event.timeStamp);
    };
    element?.addEventListener("wheel", turn, { passive: false });
    return () => element?.removeEventListener("wheel", turn);
  }, [onTurn]);
  return dial;
}

/**
 * Where a pointer has been since its last event. Between two frames a fast hand may turn more than half a turn: the
 * points in between tell which way.
 */
function pointsOf(event: globalThis.PointerEvent): readonly globalThis.PointerEvent[] {
  const points = event.getCoalescedEvents?.() ?? [];
  return points.length > 0 ? points : [event];
}

/** Pointers, touches and pens that hold the dial. */
function useHands(graduations: number, onTurn: DialProps["onTurn"]) {
  const grip = useRef(new Grip());
  // Measured once a grip: text that rewraps above the dial must not turn it.
  const center = useRef<ScreenPoint>({ clientX: 0, clientY: 0 });
  const centerOf = (element: Element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    return { clientX: left + width / 2, clientY: top + height / 2 };
  };
  const letGo = (event: PointerEvent) => grip.current.release(event.pointerId);
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.pointerType === "mouse" && event.button !== 0) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      if (!grip.current.isHeld) center.current = centerOf(event.currentTarget);
      grip.current.hold(event.pointerId, event, center.current, graduations);
    },
    onPointerMove: (event: PointerEvent) => {
      if (!grip.current.isHeld) return;
      for (const point of pointsOf(event.nativeEvent)) {
        const by = grip.current.turn(event.pointerId, point, center.current, graduations);
        if (by !== 0) onTurn(by, point.timeStamp);
      }
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onLostPointerCapture: letGo,
  };
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

/** A dial one turns by hand, finger, pen, wheel or key. Where it stands comes from above; it holds only the grip. */
export function Dial(props: DialProps) {
  const { position, graduations, numbersIncrease, hub, onTurn } = props;
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
      className="dial"
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
        {hub !== null && (
          <>
            <text className="dial-reading" y={8}>
              {hub.reading}
            </text>
            <text className="dial-note" y={34}>
              {hub.note}
            </text>
          </>
        )}
        <path className="dial-index" transform={ringTurned} d="M0 -219 L-8.5 -247 H8.5 Z" />
        {props.children}
      </svg>
    </div>
  );
}
