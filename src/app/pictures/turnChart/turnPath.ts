import { type Run, runLength } from "../../../dialing/runs";
import { faceNumber, type Graduations, reading, type Turn, turnOf } from "../../../lock/dial";

/** How the numbers lie on a dial. */
export interface Face {
  /** Graduations in one turn, > 0. */
  readonly perTurn: number;
  readonly numbersIncrease: Turn;
}

/** A point of the chart. */
export interface ChartPoint {
  /** Number on the face, graduations in [0, perTurn]; perTurn itself is the right-hand edge, where the face shows 0. */
  readonly reading: Graduations;
  /** Way turned since the top of the chart, whichever way it went, turns. */
  readonly turns: number;
}

/** One straight stroke across the chart: from where the path comes in to where it leaves at an edge, or stops. */
export interface Pass {
  readonly from: ChartPoint;
  readonly to: ChartPoint;
  /** Whether it leaves at an edge, to come in again at the other one. */
  readonly isLeaving: boolean;
}

/** A run in its place on the chart. */
export interface ChartRun extends Run {
  /** Turns turned before it, since the top of the chart; negative above the top. */
  readonly turnsBefore: number;
}

/** Strokes beyond which a run is drawn thinned out: closer than pixels can tell apart. */
const MOST_PASSES = 400;

/** Sums of moves carry rounding: a position this close to an edge is on it, graduations. */
const ON_EDGE: Graduations = 1e-6;

/** Number on the face at a position, graduations in [0, perTurn). */
export function faceReading(position: Graduations, { perTurn, numbersIncrease }: Face): Graduations {
  return faceNumber(reading(position, perTurn), perTurn, numbersIncrease);
}

/**
 * Where a path stands on the chart when it comes to a position: at the edge it comes to, where that reads 0.
 *
 * @returns graduations in [0, perTurn]
 */
export function chartReading(position: Graduations, turn: Turn, face: Face): Graduations {
  const at = faceReading(position, face);
  const isOnEdge = at < ON_EDGE || at > face.perTurn - ON_EDGE;
  const edge = acrossOf(turn, face) === 1 ? face.perTurn : 0;
  return isOnEdge ? edge : at;
}

/** Which way the chart is crossed in a turn: +1 to the right, where the numbers grow. */
export function acrossOf(turn: Turn, face: Face): 1 | -1 {
  return turn === face.numbersIncrease ? 1 : -1;
}

/** Length of a run, turns, >= 0. */
export function turnsOf(run: Run, { perTurn }: Face): number {
  return runLength(run) / perTurn;
}

/** How far down the chart a path reaches, turns. @param runs - stacked, the last one lowest */
export function bottomOf(runs: readonly ChartRun[], face: Face): number {
  const last = runs.at(-1);
  return last === undefined ? 0 : last.turnsBefore + turnsOf(last, face);
}

/** Turns since the top of the chart at a position within a run; a position off the run counts as its nearer end. */
export function turnsAt(run: ChartRun, position: Graduations, { perTurn }: Face): number {
  const length = runLength(run);
  const along = run.turn === "left" ? position - run.from : run.from - position;
  return run.turnsBefore + Math.min(length, Math.max(0, along)) / perTurn;
}

/**
 * Puts runs below each other: each begins at the height where the one before it ended.
 *
 * @param top - index of the run that begins at the top of the chart; the ones before it lie above it
 */
export function stackRuns(runs: readonly Run[], face: Face, top = 0): ChartRun[] {
  let turns = -runs.slice(0, top).reduce((sum, run) => sum + turnsOf(run, face), 0);
  return runs.map((run, index) => {
    // The sum above loses rounding; the top is exact.
    if (index === top) turns = 0;
    const placed = { ...run, turnsBefore: turns };
    turns += turnsOf(run, face);
    return placed;
  });
}

/**
 * The runs that lead through a list of stops.
 *
 * @param stops - unwrapped graduations, the start first; equal neighbors make no run
 */
export function runsThrough(stops: readonly Graduations[]): Run[] {
  return stops.slice(1).flatMap((to, index) => {
    const from = stops[index] ?? to;
    return from === to ? [] : [{ turn: turnOf(to - from), from, to }];
  });
}

/**
 * Cuts a run into strokes, each within one lap of the face: it leaves at one edge and comes in at the other at the
 * same height. A run is straight in these coordinates, so its two ends are all that is needed.
 *
 * @param most - strokes beyond which only some of them are kept, evenly, the first among them
 * @returns in the order of turning; a run of no length makes none
 */
export function passesOf(run: ChartRun, face: Face, most = MOST_PASSES): Pass[] {
  const { perTurn } = face;
  const across = acrossOf(run.turn, face);
  // Along the way the run goes, the edges are the multiples of a turn whichever way that is.
  const behind = reading(across * faceReading(run.from, face), perTurn);
  const start = behind > perTurn - ON_EDGE ? 0 : behind;
  const end = start + runLength(run);
  const stride = Math.max(1, Math.ceil(end / perTurn / most));
  const passes: Pass[] = [];
  for (let lap = 0; lap * perTurn < end - ON_EDGE; lap += stride) {
    passes.push(passIn(lap, { start, end, across, perTurn, turnsBefore: run.turnsBefore }));
  }
  return passes.filter(({ from, to }) => from.reading !== to.reading);
}

interface Way {
  /** Way from the edge behind the run to its start, graduations in [0, perTurn). */
  readonly start: Graduations;
  /** The same to its end. */
  readonly end: Graduations;
  readonly across: 1 | -1;
  readonly perTurn: number;
  readonly turnsBefore: number;
}

function passIn(lap: number, way: Way): Pass {
  const { start, end, across, perTurn, turnsBefore } = way;
  const edge = lap * perTurn;
  const point = (along: Graduations): ChartPoint => ({
    reading: across === 1 ? along - edge : perTurn - (along - edge),
    turns: turnsBefore + (along - start) / perTurn,
  });
  const isLeaving = end > edge + perTurn + ON_EDGE;
  return { from: point(Math.max(start, edge)), to: point(Math.min(end, edge + perTurn)), isLeaving };
}
