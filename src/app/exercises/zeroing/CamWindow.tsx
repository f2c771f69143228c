import type { Graduations } from "../../../lock/dial";

/** Drawing units for one graduation. */
const SCALE = 30;
/** Half of what the window shows, graduations. */
const VIEW: Graduations = 2.4;

/** Where the cam's mark stands, in words. @param deviation - of the mark from its line, graduations, left positive */
export function camWords(deviation: Graduations): string {
  if (Math.abs(deviation) > VIEW) return "the cam's mark is out of sight";
  const size = Math.abs(deviation).toFixed(1);
  return size === "0.0"
    ? "the cam's mark is on its line"
    : `the cam's mark is ${size} ${deviation > 0 ? "left" : "right"} of its line`;
}

/** A window in the case: the mark on the cam, and the line beside it. */
export function CamWindow({ deviation }: { readonly deviation: Graduations }) {
  // Seen from the front, a cam turned left carries its uppermost mark to the left.
  const x = -Math.max(-4, Math.min(4, deviation)) * SCALE;
  return (
    <svg className="magnifier block w-full" viewBox="-80 -52 160 118" aria-hidden="true">
      <clipPath id="cam-window">
        <rect x={-74} y={-44} width={148} height={78} rx={6} />
      </clipPath>
      <rect className="fill-plate stroke-line" strokeWidth={2.5} x={-76} y={-46} width={152} height={82} rx={8} />
      <g clipPath="url(#cam-window)">
        <rect className="fill-metal-2" x={-80} y={-4} width={160} height={44} />
        <line className="stroke-ink" strokeWidth={5} x1={x} x2={x} y1={-4} y2={36} />
        <line className="stroke-ink" strokeWidth={2.2} y1={-44} y2={-6} />
      </g>
      <text y={56}>cam</text>
    </svg>
  );
}
