import { scaleLinear } from "d3-scale";
import { signedText } from "../../parts/signedText";
import type { HeatCell, HeatChartModel } from "./figureModel";

const TOP = 6;
const HEIGHT = 44;
const SIDE = 16;

interface CellProps {
  readonly cell: HeatCell;
  readonly x: (value: number) => number;
  readonly worst: number;
}

/** One stretch: the fuller the bar, the worse the stops; the mean error is written in it. */
function Cell({ cell: { from, to, badness, bias }, x, worst }: CellProps) {
  const left = x(from) + 1;
  const width = x(to) - x(from) - 2;
  const full = badness === null || worst === 0 ? 0 : badness / worst;
  return (
    <>
      <rect className="fill-well" x={left} width={width} y={TOP} height={HEIGHT} />
      <rect className="fill-accent" x={left} width={width} y={TOP + HEIGHT * (1 - full)} height={HEIGHT * full} />
      <text textAnchor="middle" x={left + width / 2} y={TOP + HEIGHT + 14}>
        {bias === null ? "–" : signedText(bias)}
      </text>
    </>
  );
}

/** The dial laid out straight, and how badly one stops along it. The table behind it says the same. */
export function HeatChart({ model, width }: { readonly model: HeatChartModel; readonly width: number }) {
  const end = model.cells.at(-1)?.to ?? 1;
  const x = scaleLinear([0, end], [SIDE, width - SIDE]);
  const ruler = TOP + HEIGHT + 24;
  return (
    <svg className="plot block" width={width} height={ruler + 34} aria-hidden="true">
      {model.cells.map((cell) => (
        <Cell key={cell.from} cell={cell} x={x} worst={model.worst} />
      ))}
      <line className="stroke-line" x1={SIDE} x2={width - SIDE} y1={ruler} y2={ruler} />
      {[...model.cells.map(({ from }) => from), end].map((at) => (
        <g key={at} transform={`translate(${x(at)} ${ruler})`}>
          <line className="stroke-line" y2={4} />
          <text textAnchor="middle" y={16}>
            {at % end}
          </text>
        </g>
      ))}
      <text textAnchor="end" x={width - SIDE} y={ruler + 31}>
        {model.axis}
      </text>
    </svg>
  );
}
