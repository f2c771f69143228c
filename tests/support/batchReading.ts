import type { Graduations, Turn } from "../../src/lock/dial";

/** A run as the batch oracle finds it. */
export interface BatchRun {
  readonly turn: Turn;
  readonly from: Graduations;
  readonly to: Graduations;
}

/*
 * An oracle for the reading of a hand: design.md, "Reading the hand", read word for word on the whole motion at once.
 * It shares no code with src/dialing, and takes any time it likes.
 */

const signed = (turn: Turn) => (turn === "left" ? 1 : -1);

/** Index of the furthest position in a direction among positions[first..last], the first of equals. */
function furthest(positions: readonly Graduations[], first: number, last: number, sign: number): number {
  let best = first;
  for (let i = first; i <= last; i++) {
    if (sign * ((positions[i] as number) - (positions[best] as number)) > 0) best = i;
  }
  return best;
}

/** First index at which the dial has come back more than `turnback` from the furthest point of a run, or none. */
function endOf(positions: readonly Graduations[], first: number, sign: number, turnback: Graduations): number {
  return positions.findIndex((position, j) => {
    if (j <= first) return false;
    const best = positions[furthest(positions, first, j, sign)] as number;
    return sign * (best - position) > turnback;
  });
}

/** The runs of a whole motion. */
export function batchRuns(positions: readonly Graduations[], turnback: Graduations): BatchRun[] {
  const start = positions[0] ?? 0;
  const moved = positions.find((position) => position !== start);
  if (moved === undefined) return [];
  const runs: BatchRun[] = [];
  let sign = Math.sign(moved - start);
  let first = 0;
  while (true) {
    const end = endOf(positions, first, sign, turnback);
    const stop = furthest(positions, first, end < 0 ? positions.length - 1 : end, sign);
    runs.push({
      turn: sign > 0 ? "left" : "right",
      from: positions[first] as number,
      to: positions[stop] as number,
    });
    if (end < 0) return runs;
    first = stop;
    sign = -sign;
  }
}

/** Arrivals of a run at a number, by looking at every mark y = number + m * perTurn in its span and a turn around it. */
export function batchArrivals(run: BatchRun, number: Graduations, perTurn: number, tolerance: Graduations): number {
  const s = signed(run.turn);
  const low = Math.floor(Math.min(run.from, run.to) / perTurn) - 2;
  const high = Math.ceil(Math.max(run.from, run.to) / perTurn) + 2;
  let count = 0;
  for (let m = low; m <= high; m++) {
    const y = number + m * perTurn;
    if (s * (y - run.from) > tolerance && s * (y - run.to) <= tolerance) count += 1;
  }
  return count;
}

/** Stop error of a run at a number: the way to the nearest mark, the one to the left where two are equally near. */
export function batchStopError(run: BatchRun, number: Graduations, perTurn: number): Graduations {
  const s = signed(run.turn);
  let off = run.to - number;
  while (off > perTurn / 2) off -= perTurn;
  while (off <= -perTurn / 2) off += perTurn;
  return s * off + 0;
}

/**
 * Which run an attempt starts with: the last in the first direction that travels `freshLength`; failing that, the first
 * in that direction; -1 where there is none.
 */
export function batchStart(runs: readonly BatchRun[], firstTurn: Turn, freshLength: Graduations): number {
  const isFresh = (run: BatchRun) => run.turn === firstTurn && Math.abs(run.to - run.from) >= freshLength;
  const last = runs.findLastIndex(isFresh);
  return last >= 0 ? last : runs.findIndex((run) => run.turn === firstTurn);
}
