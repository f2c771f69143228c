import { memo } from "react";
import type { Graduations, Turn } from "../../../lock/dial";
import type { ChartFrame } from "./chartFrame";
import { TURN_LOOK } from "./turnLook";
import { acrossOf, type ChartPoint, type ChartRun, type Pass, passesOf, turnsOf } from "./turnPath";

/** Half the height of the arrow at an edge, pixels. */
const ARROW = 3;

/** Hundredths of a pixel are enough. */
const pixels = (value: number) => Math.round(100 * value) / 100;

/** The path of some strokes as SVG has it. */
export function passesPath(passes: readonly Pass[], { xOf, yOf }: ChartFrame): string {
  const place = ({ reading, turns }: ChartPoint) => `${pixels(xOf(reading))},${pixels(yOf(turns))}`;
  return passes.map(({ from, to }) => `M${place(from)}L${place(to)}`).join("");
}

/** Where a run carries its arrows: where it leaves at an edge, or half way if it does not. */
function arrowsOf(passes: readonly Pass[]): ChartPoint[] {
  const leaving = passes.filter(({ isLeaving }) => isLeaving).map(({ to }) => to);
  const [only] = passes;
  if (leaving.length > 0 || only === undefined) return leaving;
  return [{ reading: (only.from.reading + only.to.reading) / 2, turns: (only.from.turns + only.to.turns) / 2 }];
}

function arrowPath({ reading, turns }: ChartPoint, across: 1 | -1, { xOf, yOf }: ChartFrame): string {
  const [x, y] = [xOf(reading), yOf(turns)];
  const back = x - across * ARROW * 1.4;
  return `M${back.toFixed(1)},${(y - ARROW).toFixed(1)}L${x.toFixed(1)},${y.toFixed(1)}L${back.toFixed(1)},${(y + ARROW).toFixed(1)}`;
}

interface Props {
  readonly turn: Turn;
  readonly from: Graduations;
  readonly to: Graduations;
  readonly turnsBefore: number;
  readonly frame: ChartFrame;
}

/** A stub this short carries no arrow, turns. */
const STUB = 0.25;

/** One run: drawn anew only when it grows or the chart changes its scale. */
export const RunLine = memo(function RunLine({ frame, ...run }: Props) {
  const passes = passesOf(run satisfies ChartRun, frame.face);
  const across = acrossOf(run.turn, frame.face);
  const arrows = turnsOf(run, frame.face) < STUB ? [] : arrowsOf(passes);
  return (
    <g
      className={`${TURN_LOOK[run.turn].className} fill-none stroke-current`}
      strokeLinecap="round"
      strokeLinejoin="round"
    >
      <path strokeWidth={TURN_LOOK[run.turn].strokeWidth} d={passesPath(passes, frame)} />
      <path strokeWidth={1.25} d={arrows.map((at) => arrowPath(at, across, frame)).join("")} />
    </g>
  );
});
