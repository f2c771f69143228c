import { scaleLinear } from "d3-scale";
import type { IntervalChartModel, IntervalRow } from "./figureModel";

const ROW = 28;
const TOP = 6;
const LEFT = 104;
const RIGHT = 16;

type Across = (value: number) => number;

/** A diamond for the value, on a whisker for its interval. */
function Row({ row, x }: { readonly row: IntervalRow; readonly x: Across }) {
  const { label, value, interval, band } = row;
  return (
    <>
      <text className="fill-ink" textAnchor="end" x={LEFT - 10} dy="0.35em">
        {label}
      </text>
      {band && <rect className="fill-hair" x={x(band.low)} width={x(band.high) - x(band.low)} y={-5} height={10} />}
      {interval && (
        <path
          className="fill-none stroke-ink"
          strokeWidth={1.25}
          d={`M${x(interval.low)} -5v10m0 -5H${x(interval.high)}m0 -5v10`}
        />
      )}
      <path className="fill-accent" d={`M${x(value)} -6l5 6l-5 6l-5 -6z`} />
    </>
  );
}

/** Values with their intervals on one axis. The table behind it says the same. */
export function IntervalChart({ model, width }: { readonly model: IntervalChartModel; readonly width: number }) {
  const { rows, domain, axis, good, tickText } = model;
  const x = scaleLinear([domain.low, domain.high], [LEFT, width - RIGHT]).clamp(true);
  const bottom = TOP + rows.length * ROW;
  const text = tickText ?? x.tickFormat(5);
  return (
    <svg className="plot block" width={width} height={bottom + 38} aria-hidden="true">
      {good && (
        <rect className="fill-well" x={x(good.low)} width={x(good.high) - x(good.low)} y={TOP} height={bottom - TOP} />
      )}
      {x.ticks(width < 420 ? 4 : 6).map((tick) => (
        <g key={tick} transform={`translate(${x(tick)} 0)`}>
          <line className="stroke-hair" y1={TOP} y2={bottom} />
          <text textAnchor="middle" y={bottom + 14}>
            {text(tick)}
          </text>
        </g>
      ))}
      {rows.map((row, i) => (
        <g key={row.label} transform={`translate(0 ${TOP + (i + 0.5) * ROW})`}>
          <Row row={row} x={x} />
        </g>
      ))}
      <text textAnchor="end" x={width - RIGHT} y={bottom + 32}>
        {axis}
      </text>
    </svg>
  );
}
