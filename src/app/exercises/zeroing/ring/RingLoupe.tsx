import type { Graduations } from "../../../../lock/dial";

/** Drawing units for one graduation. */
const SCALE = 24;
/** Beyond this the index is at the rim of the glass, graduations. */
const REACH: Graduations = 2.6;

/** A loupe over the line on the case: the index of the ring below it, many times as large. @param error - left positive */
export function RingLoupe({ error }: { readonly error: Graduations }) {
  // Seen from the front, a ring turned left carries its index to the left.
  const x = -Math.max(-REACH, Math.min(REACH, error)) * SCALE;
  return (
    <svg className="magnifier block w-full" viewBox="-80 -80 160 160" aria-hidden="true">
      <clipPath id="ring-loupe-glass">
        <circle r={74} />
      </clipPath>
      <circle className="fill-plate stroke-line" strokeWidth={2.5} r={76} />
      <g clipPath="url(#ring-loupe-glass)">
        <path className="fill-metal-2" d="M -80 -8 H 80 V 80 H -80 Z" />
        <line className="stroke-ink" strokeWidth={4} y1={-80} y2={-10} />
        <path className="fill-accent opacity-[0.85]" d={`M ${x} -6 L ${x - 12} 40 H ${x + 12} Z`} />
        <text y={-44} x={26}>
          line
        </text>
        <text y={60} x={Math.max(-34, Math.min(34, x))}>
          index
        </text>
      </g>
    </svg>
  );
}
