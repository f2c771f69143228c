import { type DepthReading, VERNIER } from "../../../../fitting/instruments/depthGauge";

/** Units of the drawing for a millimeter, and its edges. */
const SCALE = 26;
const WIDE = 460;
const EDGE = 14;
/** The line on which scale and vernier meet. */
const MEET = 46;
const HIGH = 92;
/** What is drawn of the scale before the vernier's zero, millimeters. */
const BEFORE = 3;

/** The scale of a depth gauge with its vernier: what an eye reads off it. */
export function VernierScale({ whole_mm, line, depth_mm }: DepthReading) {
  const first = Math.max(0, whole_mm - BEFORE);
  const x = (mm: number) => EDGE + SCALE * (mm - first);
  const lines = Array.from({ length: Math.floor((WIDE - EDGE) / SCALE) }, (_, k) => first + k);
  const vernier = Array.from({ length: VERNIER.lines + 1 }, (_, k) => k);
  const lineText =
    line === 0
      ? "The vernier's 0 and 10 meet lines of the scale."
      : `Line ${line} of the vernier meets a line of the scale.`;
  return (
    <svg
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`Scale with vernier. The vernier's 0 is ${line === 0 ? "at" : "just past"} ${whole_mm} mm. ${lineText}`}
      className="fitting-section w-full max-w-[480px]"
    >
      <rect className="fill-metal-1 stroke-line" x={1} y={1} width={WIDE - 2} height={MEET - 1} />
      <rect
        className="fill-metal-2 stroke-line"
        x={x(depth_mm) - 10}
        y={MEET}
        width={SCALE * VERNIER.long_mm + 20}
        height={44}
      />
      {lines.map((mm) => (
        <g key={mm}>
          <path className="stroke-ink" strokeWidth={1.2} d={`M${x(mm)} ${MEET}v${mm % 5 === 0 ? -20 : -13}`} />
          {mm % 5 === 0 && (
            <text x={x(mm)} y={MEET - 25} textAnchor="middle">
              {mm}
            </text>
          )}
        </g>
      ))}
      {vernier.map((k) => {
        const at = x(depth_mm + (VERNIER.long_mm / VERNIER.lines) * k);
        return (
          <g key={k}>
            <path className="stroke-ink" strokeWidth={1.2} d={`M${at} ${MEET}v${k % 5 === 0 ? 18 : 12}`} />
            {k % 5 === 0 && (
              <text x={at} y={MEET + 36} textAnchor="middle">
                {k}
              </text>
            )}
          </g>
        );
      })}
    </svg>
  );
}
