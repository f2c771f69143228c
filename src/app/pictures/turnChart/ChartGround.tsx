import { memo } from "react";
import type { ChartFrame, TargetMark } from "./chartFrame";

interface Props {
  readonly frame: ChartFrame;
  readonly targets: readonly TargetMark[];
}

/** What is engraved before anything is turned: hairlines every ten graduations, turns, and the numbers to dial. */
export const ChartGround = memo(function ChartGround({ frame, targets }: Props) {
  const { left, right, top, bottom } = frame;
  return (
    <>
      {frame.hairlines.map(({ x, text }) => (
        <g key={x}>
          <line className="stroke-hair" x1={x} x2={x} y1={top} y2={bottom} />
          <text x={x} y={bottom + 13} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {frame.turnTicks.map((turns) => (
        <g key={turns}>
          <line className="stroke-hair" x1={right} x2={right + 4} y1={frame.yOf(turns)} y2={frame.yOf(turns)} />
          <text x={right + 7} y={frame.yOf(turns)} dy="0.35em">
            {turns}
          </text>
        </g>
      ))}
      <path className="fill-none stroke-line" d={`M${left},${top}H${right}`} />
      {targets.map(({ x, labelX, text }) => (
        <g key={x}>
          <path
            className="fill-none stroke-ink"
            strokeWidth={1.5}
            d={`M${labelX},${top - 5}L${x},${top - (labelX === x ? 0 : 1)}V${top}`}
          />
          <text className="fill-ink font-semibold" x={labelX} y={top - 7} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
    </>
  );
});
