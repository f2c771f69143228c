import { createElement, type ReactElement, type ReactNode } from "react";

/** A small drawing beside a word, in units of about a pixel. The words say all that it shows. */
export const drawing = (...parts: readonly ReactNode[]): ReactElement =>
  createElement(
    "svg",
    {
      viewBox: "0 0 120 90",
      className: "drawing flex-none self-center w-[120px] h-auto fill-none stroke-ink",
      "aria-hidden": true,
    },
    ...parts,
  );

/** How a shape is drawn, by what it is for. */
const KINDS = {
  line: {},
  soft: { className: "stroke-line", strokeWidth: 1.2 },
  strong: { className: "stroke-3" },
  accent: { className: "stroke-accent", strokeWidth: 2.4 },
  dash: { strokeDasharray: "4 4" },
  plate: { className: "fill-well" },
  fill: { className: "fill-ink" },
  dot: { className: "fill-accent stroke-none" },
} as const;

type Kind = keyof typeof KINDS;

/** A path of a drawing. */
export const path = (kind: Kind, d: string) => <path {...KINDS[kind]} d={d} />;

/** A circle of a drawing. */
export const circle = (kind: Kind, cx: number, cy: number, r: number) => (
  <circle {...KINDS[kind]} cx={cx} cy={cy} r={r} />
);

/** A point on a circle. @param degrees - clockwise from the top */
export function at(
  cx: number,
  cy: number,
  radius: number,
  degrees: number,
): { readonly x: number; readonly y: number } {
  const angle = (degrees * Math.PI) / 180;
  return { x: cx + radius * Math.sin(angle), y: cy - radius * Math.cos(angle) };
}

const written = ({ x, y }: { readonly x: number; readonly y: number }) => `${x.toFixed(1)} ${y.toFixed(1)}`;

interface RoundProps {
  readonly cx?: number;
  readonly cy?: number;
  readonly r: number;
}

interface TicksProps extends RoundProps {
  readonly count?: number;
  /** Of the first tick, degrees clockwise from the top. */
  readonly from?: number;
  readonly length?: number;
}

/** Graduations inside a circle. */
export function ticks({ cx = 60, cy = 45, r, count = 20, from = 0, length = 5 }: TicksProps) {
  const ticks = Array.from({ length: count }, (_, k) => {
    const angle = from + (k * 360) / count;
    return `M${written(at(cx, cy, r, angle))}L${written(at(cx, cy, r - length, angle))}`;
  });
  return <path {...KINDS.soft} d={ticks.join("")} />;
}

/** A dial seen from the front. */
export function dial({ cx = 60, cy = 45, r, from = 0 }: TicksProps) {
  return (
    <>
      <circle className="fill-well" cx={cx} cy={cy} r={r} />
      {ticks({ cx, cy, r, from })}
      <circle cx={cx} cy={cy} r={r * 0.4} />
    </>
  );
}

interface ArrowProps extends RoundProps {
  /** Degrees clockwise from the top. */
  readonly from: number;
  readonly to: number;
}

/** A bent arrow round a center, from one angle to another; whichever is larger decides which way it turns. */
export function arrow({ cx = 60, cy = 45, r, from, to }: ArrowProps) {
  const way = Math.sign(to - from);
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const sweep = way > 0 ? 1 : 0;
  const end = at(cx, cy, r, to);
  const back = (560 / r) * way;
  const head = `M${written(at(cx, cy, r + 4.5, to - back))}L${written(end)}L${written(at(cx, cy, r - 4.5, to - back))}`;
  return (
    <path
      {...KINDS.accent}
      d={`M${written(at(cx, cy, r, from))}A${r} ${r} 0 ${large} ${sweep} ${written(end)}${head}`}
    />
  );
}

interface MarkProps extends RoundProps {
  readonly degrees: number;
  readonly length?: number;
  readonly kind?: Kind;
}

/** A mark that points to a center from outside. */
export function mark({ cx = 60, cy = 45, r, degrees, length = 8, kind = "strong" }: MarkProps) {
  return (
    <path {...KINDS[kind]} d={`M${written(at(cx, cy, r, degrees))}L${written(at(cx, cy, r + length, degrees))}`} />
  );
}

interface GatedProps extends RoundProps {
  /** Where its gate is, degrees clockwise from the top. */
  readonly gate: number;
}

/** A wheel with the notch of its gate, seen from the front. */
export function wheel({ cx = 60, cy = 45, r, gate }: GatedProps) {
  const half = 330 / r;
  const [one, two] = [gate + half, gate - half];
  const inner = r - 9;
  const corners = [at(cx, cy, inner, two), at(cx, cy, inner, one), at(cx, cy, r, one)].map(written);
  return (
    <>
      <path
        className="fill-well"
        d={`M${written(at(cx, cy, r, one))}A${r} ${r} 0 1 1 ${written(at(cx, cy, r, two))}L${corners.join("L")}Z`}
      />
      <circle cx={cx} cy={cy} r={4} />
    </>
  );
}

/** Words of a drawing. */
export const label = (x: number, y: number, words: string) => (
  <text className="fill-ink stroke-none text-fine" textAnchor="middle" x={x} y={y}>
    {words}
  </text>
);
