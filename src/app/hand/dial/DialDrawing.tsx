import { type ReactNode, useId } from "react";
import type { Graduations, Turn } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";
import { DialFace } from "./DialFace";
import { DialLight } from "./DialLight";
import { dialRotation } from "./dialGeometry";
import { Engraved } from "./Engraved";
import { Hub, type HubText } from "./Hub";
import { KnobBody, KnobRibs } from "./Knob";
import { TurnArrow } from "./TurnArrow";
import { WindUp } from "./WindUp";
import "./dial.css";

/** What is to be seen of a dial. */
export interface DialDrawingProps {
  readonly profile: Pick<Profile, "graduations" | "numbersIncrease">;
  /** Unwrapped graduations, as all of these are left positive. */
  readonly position: Graduations;
  /** Which way to turn, shown as an arrow; null shows none. */
  readonly pointTo: Turn | null;
  /** Text in the hub, if any. */
  readonly hub: HubText | null;
  /** Whether the lock has just opened and its bolt is back: the ring says so. */
  readonly isOpen: boolean;
  /** How far the ring with the opening index stands off the true place. */
  readonly ringTurn: Graduations;
  /** How far the hand is ahead of a heavy dial. */
  readonly windUp: Graduations;
  /** A second index on the ring, where the lock has one; left of the opening index. */
  readonly changingIndex: Graduations | undefined;
  /** Room round the ring for `children`, in the drawing's units. */
  readonly surround: number;
  /** Drawn round the ring, in the drawing's own frame: the middle of the dial is 0 0, the ring's rim at 253. */
  readonly children?: ReactNode;
}

/** From the middle of the drawing to its edge, in its units. */
export const reachOf = (surround: number) => 256 + surround;

const INDEX = "M0 -216 L-8.5 -247 H8.5 Z";

/** The second index: hollow and flat, so that nobody takes it for the opening index. */
function ChangingIndex({ turned, arc }: { readonly turned: string; readonly arc: string }) {
  return (
    <g transform={turned}>
      <path
        className="fill-none stroke-ink"
        strokeWidth={2}
        strokeLinejoin="round"
        d="M0 -226 L-7 -247 H7 Z M-11 -251 H11"
      />
      <text className="dial-caption">
        <textPath href={`#${arc}`} startOffset="0">
          changing index
        </textPath>
      </text>
    </g>
  );
}

/** The drawing of a dial, wherever it is shown: under a hand, or as a picture. */
export function DialDrawing(props: DialDrawingProps) {
  const { position, isOpen, ringTurn, changingIndex } = props;
  const { graduations, numbersIncrease } = props.profile;
  const name = useId();
  const arc = `${name}-arc`;
  const rotation = dialRotation(position, graduations);
  const reach = reachOf(props.surround);
  const ringTurned = `rotate(${dialRotation(ringTurn, graduations)})`;
  const turned = `rotate(${rotation})`;

  return (
    <svg viewBox={`${-reach} ${-reach} ${2 * reach} ${2 * reach}`} aria-hidden="true">
      <defs>
        <DialLight name={name} rotation={rotation} />
        {/* The caption is engraved along the ring, beside the index. */}
        <path id={arc} d="M 16 -234.5 A 235 235 0 0 1 235 0" />
      </defs>
      {/* The plate within the ring is the page's own, below the drawing. */}
      <circle className="fill-none stroke-well" strokeWidth={27} r={239.5} />
      <circle className="fill-none" strokeWidth={2.5} r={252} stroke={`url(#${name}-sunken)`} />
      {isOpen && (
        // The lock has opened: a band goes once round the ring, outside the index, and stays while the bolt is back.
        <circle
          className="dial-open-ring fill-none stroke-accent"
          strokeWidth={6.4}
          strokeDasharray="100"
          r={249.3}
          pathLength={100}
          transform="rotate(-90)"
        />
      )}
      <circle className="fill-none" strokeWidth={3.5} r={225} stroke={`url(#${name}-raised)`} />
      <circle className="fill-none stroke-ink" strokeWidth={1.1} r={226.8} />
      <text className="dial-caption" transform={ringTurned}>
        <textPath href={`#${arc}`} startOffset="0">
          opening index
        </textPath>
      </text>
      {changingIndex !== undefined && (
        <ChangingIndex turned={`rotate(${dialRotation(changingIndex + ringTurn, graduations)})`} arc={arc} />
      )}
      <Engraved turned={turned}>
        <DialFace graduations={graduations} numbersIncrease={numbersIncrease} />
      </Engraved>
      <circle className="fill-none" strokeWidth={2.5} r={146} stroke={`url(#${name}-sunken)`} />
      <WindUp windUp={props.windUp} graduations={graduations} />
      {props.pointTo !== null && <TurnArrow turn={props.pointTo} />}
      <circle cx={2} cy={8} r={136} fill={`url(#${name}-cast)`} />
      <g className="dial-knob">
        <g className="dial-turned" transform={turned} fill={`url(#${name}-knob)`} stroke={`url(#${name}-knob-edge)`}>
          <KnobBody />
        </g>
        <Engraved turned={turned}>
          <KnobRibs />
        </Engraved>
      </g>
      <circle className="fill-plate" r={80} />
      <circle className="dial-hub-edge fill-none" strokeWidth={2.5} r={81} stroke={`url(#${name}-sunken)`} />
      <Hub text={props.hub} />
      {/* It stands above the plate, and casts its shadow on what turns below it. */}
      <path className="fill-(--shadow)" transform={`translate(2 4) ${ringTurned}`} d={INDEX} />
      <path className="fill-accent" transform={ringTurned} d={INDEX} />
      {props.children}
    </svg>
  );
}
