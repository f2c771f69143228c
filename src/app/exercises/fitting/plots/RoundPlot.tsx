import { scaleLinear } from "d3-scale";
import type { ReactNode } from "react";
import type { Graduations } from "../../../../lock/dial";

const WIDTH = 480;
const HEIGHT = 170;
const EDGE = { left: 44, right: 12, top: 14, bottom: 26 };
const STEPS = 100;
/** Half of what the plot shows at least, graduations, and the room above the largest error. */
const LEAST: Graduations = 0.2;
const ROOM = 1.15;

/** An error all round, solid or in dashes. */
interface Curve {
  readonly errorAt: (place: Graduations) => Graduations;
  readonly isDashed: boolean;
}

interface RoundPlotProps {
  readonly label: string;
  readonly perTurn: number;
  readonly curves: readonly Curve[];
  /** Places of the first curve that are marked by a dot. */
  readonly dots: readonly Graduations[];
  /** Words below the plot: where it begins and ends, and its middle. */
  readonly ends: string;
  readonly middle: string;
  readonly children: ReactNode;
}

/** Errors all round a ring or a dial: a level line for what zero takes, and a wave for what it cannot. */
export function RoundPlot({ label, perTurn, curves, dots, ends, middle, children }: RoundPlotProps) {
  const places = Array.from({ length: STEPS + 1 }, (_, k) => (k / STEPS) * perTurn);
  const errors = curves.map(({ errorAt }) => places.map(errorAt));
  const most = Math.max(LEAST, ...errors.flat().map(Math.abs)) * ROOM;
  const x = scaleLinear([0, perTurn], [EDGE.left, WIDTH - EDGE.right]);
  const y = scaleLinear([-most, most], [HEIGHT - EDGE.bottom, EDGE.top]);
  const lineOf = (curve: readonly Graduations[]) =>
    places.map((place, k) => `${k === 0 ? "M" : "L"}${x(place).toFixed(1)} ${y(curve[k] ?? 0).toFixed(1)}`).join("");
  return (
    <figure className="fitting-section">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
        {y.ticks(5).map((tick) => (
          <g key={tick}>
            <path className="stroke-hair" d={`M${EDGE.left} ${y(tick)}H${WIDTH - EDGE.right}`} />
            <text x={EDGE.left - 6} y={y(tick) + 4} textAnchor="end">
              {tick}
            </text>
          </g>
        ))}
        {curves.map(({ isDashed }, k) => (
          <path
            key={isDashed ? "dashed" : "solid"}
            className="stroke-accent fill-none"
            strokeWidth={2}
            strokeDasharray={isDashed ? "6 4" : undefined}
            d={lineOf(errors[k] ?? [])}
          />
        ))}
        {dots.map((place) => (
          <circle key={place} className="fill-ink" cx={x(place)} cy={y(curves[0]?.errorAt(place) ?? 0)} r={4} />
        ))}
        <text x={EDGE.left} y={HEIGHT - 6}>
          {ends}
        </text>
        <text x={(EDGE.left + WIDTH - EDGE.right) / 2} y={HEIGHT - 6} textAnchor="middle">
          {middle}
        </text>
      </svg>
      <figcaption className="text-small text-soft">{children}</figcaption>
    </figure>
  );
}
