import { scaleLinear } from "d3-scale";
import { useRef } from "react";
import type { Graduations, Turn } from "../../../lock/dial";
import type { Interval } from "../../../statistics/interval";
import type { LostMotionEstimate, SideResult } from "../../../zeroing/zeroResult";
import { useSize } from "../../parts/page/useSize";
import { signedText } from "../../parts/signedText";

interface ReadingsPlotProps {
  readonly order: readonly [Turn, Turn];
  readonly readings: Readonly<Record<Turn, readonly Graduations[]>>;
  readonly results: Readonly<Record<Turn, SideResult>>;
  readonly lostMotion: LostMotionEstimate;
  /** The lock's own lost motion. */
  readonly truth: Graduations;
  readonly tolerance: Graduations;
}

const ROW = 40;
const TOP = 16;
const LEFT = 86;

interface MeanProps {
  readonly x: (value: number) => number;
  readonly mean: Graduations;
  readonly interval: Interval;
}

/** A mean with its interval: a diamond on a whisker with end caps. */
function Mean({ x, mean, interval }: MeanProps) {
  return (
    <g className="fill-none stroke-ink" strokeWidth={1.6}>
      <path d={`M ${x(interval.low)} -5 v 10 m 0 -5 H ${x(interval.high)} m 0 -5 v 10`} />
      <path className="fill-accent stroke-none" d={`M ${x(mean)} -7 l 6 7 l -6 7 l -6 -7 z`} />
    </g>
  );
}

/** The widest whisker worth showing whole, graduations: three readings can leave an interval of any length. */
const farthest = ({ results, lostMotion, truth, tolerance }: ReadingsPlotProps) =>
  Math.min(
    4,
    Math.max(
      ...[...Object.values(results).map(({ ci95 }) => ci95), lostMotion.ci95].flatMap(({ low, high }) => [-low, high]),
      truth,
      tolerance * 1.6,
      1,
    ),
  );

/** The readings of both sides on one axis with the tolerance, the means and their intervals, and the lost motion. */
export function ReadingsPlot(props: ReadingsPlotProps) {
  const { order, readings, results, lostMotion, truth, tolerance } = props;
  const frame = useRef<HTMLDivElement>(null);
  const width = useSize(frame)?.width ?? 440;
  const reach = farthest(props);
  // A panel that is not laid out yet, or is hidden, has no width of its own.
  const x = scaleLinear([-reach, reach], [LEFT, Math.max(LEFT, width - 12)]).clamp(true);
  const bottom = TOP + 3 * ROW;
  return (
    <div ref={frame} className="readings mt-3">
      <svg width={width} height={bottom + 34} aria-hidden="true">
        <rect
          className="fill-well stroke-hair"
          x={x(-tolerance)}
          width={x(tolerance) - x(-tolerance)}
          y={TOP - 8}
          height={2 * ROW}
        />
        {x.ticks(5).map((tick) => (
          <g key={tick} transform={`translate(${x(tick)} 0)`}>
            <line className="stroke-hair" y1={TOP - 8} y2={bottom} />
            <text textAnchor="middle" y={bottom + 14}>
              {signedText(tick)}
            </text>
          </g>
        ))}
        <text textAnchor="end" x={width - 12} y={bottom + 30}>
          graduations off zero, left positive
        </text>
        {order.map((side, row) => (
          <g key={side} transform={`translate(0 ${TOP + row * ROW + 12})`}>
            <text className="fill-ink">turning {side}</text>
            {readings[side].map((deviation, k) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: readings keep their place in the series
              <circle key={k} className="fill-none stroke-ink" strokeWidth={1.6} cx={x(deviation)} cy={-9} r={4} />
            ))}
            <g transform="translate(0 6)">
              <Mean x={x} mean={results[side].mean} interval={results[side].ci95} />
            </g>
          </g>
        ))}
        <g transform={`translate(0 ${TOP + 2 * ROW + 18})`}>
          <text className="fill-ink">lost motion</text>
          <path className="stroke-accent" strokeWidth={2.5} strokeDasharray="4 2" d={`M ${x(truth)} -12 V 12`} />
          <Mean x={x} mean={lostMotion.estimate} interval={lostMotion.ci95} />
        </g>
      </svg>
    </div>
  );
}
