import { ticks } from "d3-array";
import type { Scales } from "./nearestPoint";
import { spread, textWidth } from "./placeLabels";
import type { Face } from "./turnPath";

/** Room for the chart on the screen, pixels. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** The engraved frame of the chart: its edges and scales, pixels. */
export interface ChartFrame extends Scales, Size {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly face: Face;
  /** Numbers of the hairlines, the edges among them, and what is written below them; empty where there is no room. */
  readonly hairlines: readonly { readonly x: number; readonly text: string }[];
  /** Whole turns that are written beside the chart. */
  readonly turnTicks: readonly number[];
}

const MARGIN = { left: 54, right: 22, bottom: 17, top: 5 };
/** Height of a target's tick, and of the label above it. */
const TARGET = { tick: 5, label: 13 };
/** Room within the frame, so that neither the start nor the tip touches it. */
const PAD = 5;
/** Turns that the chart has room for before it begins to draw closer. */
const LEAST_TURNS = 8;
const LABEL_ROOM = 24;

/** Turns that the chart shows: eight, or all there are. */
export function turnsShown(...reached: readonly number[]): number {
  return Math.max(LEAST_TURNS, ...reached.map((turns) => Math.ceil(turns - 1e-9)));
}

/** A straight scale: 0 at `start`, `domain` at `end`, pixels. */
const straight = (domain: number, start: number, end: number) => (value: number) =>
  start + (value / domain) * (end - start);

const rightEdge = (width: number) => Math.max(MARGIN.left + 1, width - MARGIN.right);

const acrossScale = (width: number, { perTurn }: Face) => straight(perTurn, MARGIN.left, rightEdge(width));

function hairlinesOf(face: Face, xOf: (reading: number) => number): ChartFrame["hairlines"] {
  const { perTurn } = face;
  const spacing = xOf(10) - xOf(0);
  const every = [10, 20, 50, 100].find((step) => (spacing * step) / 10 >= LABEL_ROOM) ?? 100;
  const inner = Array.from({ length: Math.ceil(perTurn / 10) }, (_, k) => k * 10);
  const lines = inner.map((at) => {
    const isFree = at % every === 0 && xOf(perTurn) - xOf(at) >= LABEL_ROOM * 0.8;
    return { x: xOf(at), text: isFree ? String(at) : "" };
  });
  // The dial has no number N: where the chart ends it reads 0 again.
  return [...lines, { x: xOf(perTurn), text: "0" }];
}

/** A number to dial, marked at the top of the chart. */
export interface TargetMark {
  /** Where its tick stands, pixels. */
  readonly x: number;
  /** Middle of its label, moved aside where the one before it is close. */
  readonly labelX: number;
  readonly text: string;
}

/**
 * Where the targets are marked.
 *
 * @param numbers - on the face, graduations; equal ones share a mark
 */
export function targetMarks(
  numbers: readonly { readonly at: number; readonly text: string }[],
  width: number,
  face: Face,
): TargetMark[] {
  const xOf = acrossScale(width, face);
  const once = numbers.filter((one, index) => numbers.findIndex(({ at }) => at === one.at) === index);
  const rising = once.toSorted((a, b) => a.at - b.at);
  const distance = Math.max(0, ...rising.map(({ text }) => textWidth(text))) + 6;
  const labels = spread(
    rising.map(({ at }) => xOf(at)),
    distance,
    width - MARGIN.right / 2,
  );
  return rising.map(({ at, text }, index) => ({ x: xOf(at), labelX: labels[index] ?? xOf(at), text }));
}

/**
 * Lays out the chart.
 *
 * @param turns - turns shown, > 0
 */
export function chartFrame(size: Size, turns: number, face: Face): ChartFrame {
  const top = MARGIN.top + TARGET.tick + TARGET.label;
  const bottom = Math.max(top + 2 * PAD + 1, size.height - MARGIN.bottom);
  const across = acrossScale(size.width, face);
  const down = straight(turns, top + PAD, bottom - PAD);
  return {
    ...size,
    left: MARGIN.left,
    right: rightEdge(size.width),
    top,
    bottom,
    face,
    xOf: across,
    yOf: down,
    hairlines: hairlinesOf(face, across),
    turnTicks: ticks(0, turns, Math.max(2, Math.floor((bottom - top) / 22))).filter(Number.isInteger),
  };
}
