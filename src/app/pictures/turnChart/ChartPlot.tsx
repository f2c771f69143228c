import { type PointerEvent, useId, useMemo } from "react";
import { ChartGround } from "./ChartGround";
import { ChartStretches } from "./ChartStretches";
import type { ChartEvent, ChartModel } from "./chartEvents";
import type { ChartFrame, TargetMark } from "./chartFrame";
import type { Lock } from "./chartWords";
import { EventSigns } from "./EventSigns";
import type { Pixel } from "./nearestPoint";
import { passesPath, RunLine } from "./RunLine";
import { TURN_LOOK } from "./turnLook";
import { acrossOf, type ChartPoint, type ChartRun, passesOf } from "./turnPath";

interface Props {
  readonly model: ChartModel;
  readonly frame: ChartFrame;
  readonly targets: readonly TargetMark[];
  readonly lock: Lock;
  readonly hasFigures: boolean;
  readonly ghost: readonly ChartRun[];
  /** Where the dial stands while the attempt goes on; null once it is over. */
  readonly tip: ChartPoint | null;
  /** Where the replay stands, or null. */
  readonly playhead: ChartPoint | null;
  /** What the pointer is on, or null. */
  readonly pointed: ChartPoint | null;
  readonly onPointer: (at: Pixel | null) => void;
  readonly onChoosePointed: () => void;
  readonly onFocus: (id: string | null) => void;
  readonly onChoose: (event: ChartEvent) => void;
}

/** Where a pointer is on the chart, pixels; a viewport unit is a pixel. */
const pointerAt = (event: PointerEvent<SVGSVGElement>) => {
  const { left, top } = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - left, y: event.clientY - top };
};

/** The drawing. */
export function ChartPlot(props: Props) {
  const { model, frame, targets, lock, tip, playhead, pointed, onPointer } = props;
  const { width, height } = frame;
  return (
    <svg
      className="turn-chart-svg absolute inset-0 block overflow-visible"
      viewBox={`0 0 ${width} ${height}`}
      width={width}
      height={height}
      onPointerMove={(event) => onPointer(pointerAt(event))}
      onPointerDown={(event) => onPointer(pointerAt(event))}
      onPointerLeave={() => onPointer(null)}
      onPointerUp={props.onChoosePointed}
    >
      <title>Path of the dial</title>
      <svg aria-hidden="true" className="overflow-visible pointer-events-none">
        <ChartGround frame={frame} targets={targets} />
        <ChartStretches stretches={model.stretches} frame={frame} lock={lock} />
        <Ghost runs={props.ghost} frame={frame} />
        <ChartRuns model={model} frame={frame} playhead={playhead} />
        {tip && <Tip at={tip} frame={frame} last={model.runs.at(-1)} />}
      </svg>
      <EventSigns
        {...{ frame, lock }}
        events={model.events}
        hasFigures={props.hasFigures}
        onFocus={props.onFocus}
        onChoose={props.onChoose}
      />
      <svg aria-hidden="true" className="overflow-visible pointer-events-none">
        {pointed && <Pointed at={pointed} frame={frame} />}
        {playhead && <Playhead at={playhead} frame={frame} />}
      </svg>
    </svg>
  );
}

function Ghost({ runs, frame }: { readonly runs: readonly ChartRun[]; readonly frame: ChartFrame }) {
  const path = useMemo(() => runs.map((run) => passesPath(passesOf(run, frame.face), frame)).join(""), [runs, frame]);
  return <path className="turn-chart-ghost fill-none stroke-line" strokeWidth={1} strokeDasharray="5 3" d={path} />;
}

interface RunsProps {
  readonly model: ChartModel;
  readonly frame: ChartFrame;
  readonly playhead: ChartPoint | null;
}

/** The path; in a replay, what is still to come is pale: the path only ever goes down, so a level line parts the two. */
function ChartRuns({ model, frame, playhead }: RunsProps) {
  const clip = useId();
  const runs = model.runs.slice(model.top);
  const lines = runs.map(({ turn, from, to, turnsBefore }) => (
    <RunLine key={turnsBefore} turn={turn} from={from} to={to} turnsBefore={turnsBefore} frame={frame} />
  ));
  if (playhead === null) return lines;
  const y = frame.yOf(Math.max(0, playhead.turns));
  return (
    <>
      <clipPath id={clip}>
        <rect x={0} y={0} width={frame.width} height={y} />
      </clipPath>
      <g className="opacity-[0.3]">{lines}</g>
      <g clipPath={`url(#${clip})`}>{lines}</g>
    </>
  );
}

interface MarkProps {
  readonly at: ChartPoint;
  readonly frame: ChartFrame;
}

/** Where the dial stands: an arrowhead that points the way it was turned; a rhomb before the first move. */
function Tip({ at, frame, last }: MarkProps & { readonly last: ChartRun | undefined }) {
  const [x, y] = [frame.xOf(at.reading), frame.yOf(at.turns)];
  const across = last === undefined ? 0 : acrossOf(last.turn, frame.face);
  const shape = across === 0 ? `M${x},${y - 4}l4,4l-4,4l-4,-4z` : `M${x + across * 4},${y}l${-across * 8},-4.5v9z`;
  return (
    <path
      className={`turn-chart-tip fill-current stroke-plate ${TURN_LOOK[last?.turn ?? "left"].className}`}
      d={shape}
    />
  );
}

function Playhead({ at, frame }: MarkProps) {
  const [x, y] = [frame.xOf(at.reading), frame.yOf(Math.max(0, at.turns))];
  return (
    <g className="pointer-events-none">
      <circle className="fill-plate stroke-ink" strokeWidth={2} cx={x} cy={y} r={6} />
      <circle className="fill-ink" cx={x} cy={y} r={1.8} />
    </g>
  );
}

function Pointed({ at, frame }: MarkProps) {
  const [x, y] = [frame.xOf(at.reading), frame.yOf(at.turns)];
  return (
    <g className="pointer-events-none">
      <path className="stroke-line" d={`M${x},${y + 8}V${frame.bottom}`} />
      <circle className="fill-none stroke-ink" cx={x} cy={y} r={6.5} />
    </g>
  );
}
