import { NOT_LOCKED } from "../../../../handover/run/situationWords";

interface DoorPictureProps {
  /** How far the bolt is drawn back, 0 to 1. */
  readonly retraction: number;
  readonly isHeld: boolean;
}

/** How far the bolt comes out, units of the picture. */
const THROW = 34;

/** The edge of a door seen from above, its frame, the bolt, and the slide that holds it back. */
export function DoorPicture({ retraction, isHeld }: DoorPictureProps) {
  const drawn = THROW * retraction;
  const words = isHeld
    ? "Held back: this door does not lock."
    : retraction === 0
      ? "The bolt is thrown: the door is locked."
      : NOT_LOCKED;
  return (
    <figure className="holdback-door max-w-[520px]">
      <svg viewBox="0 0 330 130" aria-hidden="true">
        <path className="fill-metal-2" d="M250 18h62v94h-62v-30h40v-34h-40Z" />
        <path className="fill-metal-1" d="M18 34h224v62H18Z" />
        <path className="fill-well stroke-line" d="M96 42h146v46H96Z" />
        <g transform={`translate(${-drawn} 0)`}>
          <path className="fill-metal-3" d="M136 53h140v24H136Z" />
          <path className="fill-well" d="M168 53h16v8h-16Z" />
        </g>
        <g transform={isHeld ? "translate(0 8)" : undefined}>
          <path className="fill-accent" d={`M${168 - THROW} 30h16v22h-16Z`} />
        </g>
        <text x={140} y={22}>
          {isHeld ? "holdback on" : "holdback off"}
        </text>
        <text x={30} y={70}>
          door
        </text>
        <text x={258} y={126}>
          frame
        </text>
      </svg>
      <figcaption className="text-title">{words}</figcaption>
    </figure>
  );
}
