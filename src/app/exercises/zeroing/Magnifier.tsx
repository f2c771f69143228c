import { faceNumber, type Reading, reading } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";

/** Drawing units for one graduation. */
const SCALE = 30;
const REACH = 3;

interface MagnifierProps {
  /** What the index as drawn reads, unwrapped graduations. */
  readonly seen: Reading;
  readonly profile: Pick<Profile, "graduations" | "numbersIncrease">;
}

/** A loupe over the opening index: the marks near it, seven times as large. */
export function Magnifier({ seen, profile }: MagnifierProps) {
  const { graduations, numbersIncrease } = profile;
  const nearest = Math.round(seen);
  const marks = Array.from({ length: 2 * REACH + 1 }, (_, k) => nearest + k - REACH);
  return (
    <svg className="magnifier block w-full" viewBox="-80 -80 160 160" aria-hidden="true">
      <clipPath id="magnifier-glass">
        <circle r={74} />
      </clipPath>
      <circle className="fill-plate stroke-line" strokeWidth={2.5} r={76} />
      <g clipPath="url(#magnifier-glass)">
        {marks.map((mark) => {
          const number = faceNumber(reading(mark, graduations), graduations, numbersIncrease);
          return (
            <g key={mark} transform={`translate(${(mark - seen) * SCALE} 0)`}>
              <line className="stroke-ink" strokeWidth={2.2} y1={-8} y2={number % 5 === 0 ? 34 : 22} />
              <text y={52}>{number}</text>
            </g>
          );
        })}
        <path className="fill-accent opacity-[0.85]" d="M 0 -8 L -13 -62 H 13 Z" />
      </g>
    </svg>
  );
}
