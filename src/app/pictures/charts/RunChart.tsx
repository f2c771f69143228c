import { type ScaleLinear, scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { RunChartModel, RunLine, RunPoint } from "./figureModel";

const HEIGHT = 216;
const TOP = 22;
const BOTTOM = 38;
const LEFT = 46;
const RIGHT = 44;

interface Scales {
  readonly x: ScaleLinear<number, number>;
  readonly y: ScaleLinear<number, number>;
}

/** Engraved ground: hairlines, what is written at them, and what the axes show. */
function Ground({
  model,
  scales,
  width,
}: {
  readonly model: RunChartModel;
  readonly scales: Scales;
  readonly width: number;
}) {
  const { x, y } = scales;
  const bottom = HEIGHT - BOTTOM;
  const text = model.y.tickText ?? y.tickFormat(5);
  const across = model.x.isCount ? String : x.tickFormat(8);
  return (
    <>
      {y.ticks(5).map((tick) => (
        <g key={tick} transform={`translate(0 ${y(tick)})`}>
          <line className="stroke-hair" x1={LEFT} x2={width - RIGHT} />
          <text className="fill-ink" textAnchor="end" x={LEFT - 6} dy="0.35em">
            {text(tick)}
          </text>
        </g>
      ))}
      {x
        .ticks(width < 420 ? 4 : 8)
        .filter((tick) => !model.x.isCount || Number.isInteger(tick))
        .map((tick) => (
          <g key={tick} transform={`translate(${x(tick)} 0)`}>
            <line className="stroke-hair" y1={bottom} y2={bottom + 4} />
            <text textAnchor="middle" y={bottom + 16}>
              {across(tick)}
            </text>
          </g>
        ))}
      <text x={0} y={12}>
        {model.y.label}
      </text>
      <text textAnchor="end" x={width - RIGHT} y={HEIGHT - 5}>
        {model.x.label}
      </text>
    </>
  );
}

function Line({ one, scales: { x, y } }: { readonly one: RunLine; readonly scales: Scales }) {
  const drawn = line<RunPoint>(
    (point) => x(point.x),
    (point) => y(point.y),
  )(one.points);
  const end = one.points.at(-1);
  return (
    <>
      <path className={`plot-line fill-none stroke-line ${one.look}`} d={drawn ?? ""} />
      {one.label !== undefined && end !== undefined && (
        <text x={x(end.x) + 5} y={y(end.y)} dy="0.35em">
          {one.label}
        </text>
      )}
    </>
  );
}

/** Something measured over attempts, or over a tolerance. The table behind it says the same. */
export function RunChart({ model, width }: { readonly model: RunChartModel; readonly width: number }) {
  const x = scaleLinear([model.x.domain.low, model.x.domain.high], [LEFT + 6, width - RIGHT]);
  const y = scaleLinear([model.y.domain.low, model.y.domain.high], [HEIGHT - BOTTOM, TOP]).clamp(true);
  const band = area<RunChartModel["band"][number]>()
    .x((one) => x(one.x))
    .y0((one) => y(one.low))
    .y1((one) => y(one.high))(model.band);
  return (
    <svg className="plot block" width={width} height={HEIGHT} aria-hidden="true">
      <Ground model={model} scales={{ x, y }} width={width} />
      {band !== null && <path className="fill-well" d={band} />}
      {model.lines.map((one, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the lines of a chart keep their order
        <Line key={i} one={one} scales={{ x, y }} />
      ))}
      {model.dots.map((dot, i) => (
        <circle
          // biome-ignore lint/suspicious/noArrayIndexKey: two dots may lie in one place, and dots keep their order
          key={i}
          className={dot.isMarked ? "plot-dot fill-ink marked" : "plot-dot fill-ink"}
          cx={x(dot.x)}
          cy={y(dot.y)}
          r={dot.isMarked ? 4 : 2.6}
        />
      ))}
    </svg>
  );
}
