import type { Attempt } from "../../../dialing/attempt";
import type { WordedFault } from "../../../dialing/faultWords";
import { type Leg, legArrivals, type Target } from "../../../dialing/leg";
import { stopError } from "../../../dialing/runs";
import { type Graduations, signOf, type Turn } from "../../../lock/dial";
import { bottomOf, type ChartRun, type Face, stackRuns, turnsAt } from "./turnPath";

/** A point of the path that has something to tell. */
export interface ChartEvent {
  readonly id: string;
  readonly kind: "arrival" | "stop" | "open" | "fault";
  /** Unwrapped graduations. */
  readonly position: Graduations;
  /** Turns since the top of the chart. */
  readonly turns: number;
  readonly turn: Turn;
  /** Index of its number; the procedure's length for the draw. */
  readonly step: number;
  /** Arrivals made at the number up to here, this one included. */
  readonly arrivals: number;
  /** Whether the number came to the index here; a stop on the number is its last arrival. */
  readonly isArrival: boolean;
  /** Of a stop at a number, graduations. */
  readonly error: Graduations | null;
  readonly faults: readonly WordedFault[];
}

/** The rows of the chart that belong to one number, to the draw, or to a run outside the procedure. */
export interface Stretch {
  readonly turn: Turn;
  /** Index of the number; the procedure's length for the draw, null outside the procedure. */
  readonly step: number | null;
  readonly fromTurns: number;
  readonly toTurns: number;
}

/** An attempt as the chart draws it. */
export interface ChartModel {
  /** Every run of the attempt; those above the top of the chart have negative turns. */
  readonly runs: readonly ChartRun[];
  /** Index of the run at the top of the chart. */
  readonly top: number;
  /** How far down the path reaches, turns. */
  readonly turns: number;
  readonly stretches: readonly Stretch[];
  /** In the order in which the path comes to them. */
  readonly events: readonly ChartEvent[];
}

/** Arrivals of one leg beyond which only the latest are marked. */
const MOST_ARRIVALS = 100;

/**
 * The run the chart begins with: the fresh start, or the wrong turn before it where that is a fault.
 */
function topRun({ reader }: Attempt, faults: readonly WordedFault[]): number {
  const fresh = reader.legs[0]?.firstRun ?? 0;
  const isWrongWay = faults.some((fault) => fault.code === "wrong-way");
  return isWrongWay ? Math.max(0, fresh - 1) : fresh;
}

/**
 * Lays an attempt out on the chart.
 *
 * @param faults - what to mark, in dialing order
 * @param isOver - whether the last point of the path is a stop
 */
export function chartModel(attempt: Attempt, faults: readonly WordedFault[], face: Face, isOver: boolean): ChartModel {
  const top = topRun(attempt, faults);
  const runs = stackRuns(attempt.reader.runs, face, top);
  const turns = bottomOf(runs, face);
  const scene: Scene = { attempt, face, runs, turns, isOver };
  return { runs, top, turns, stretches: stretchesOf(scene, top), events: withFaults(scene, eventsOf(scene), faults) };
}

interface Scene {
  readonly attempt: Attempt;
  readonly face: Face;
  readonly runs: readonly ChartRun[];
  readonly turns: number;
  readonly isOver: boolean;
}

function stretchesOf({ attempt, face, runs }: Scene, top: number): Stretch[] {
  const { legs } = attempt.reader;
  const inLegs = legs.flatMap((leg): Stretch[] => {
    const first = runs[leg.firstRun];
    const last = runs[leg.lastRun];
    if (first === undefined || last === undefined) return [];
    const step = leg.step <= attempt.profile.procedure.length ? leg.step : null;
    return [{ turn: leg.turn, step, fromTurns: first.turnsBefore, toTurns: bottomOf([last], face) }];
  });
  const isOutside = (index: number) =>
    index >= top && !legs.some((leg) => leg.firstRun <= index && index <= leg.lastRun);
  const outside = runs.flatMap((run, index): Stretch[] =>
    isOutside(index)
      ? [{ turn: run.turn, step: null, fromTurns: run.turnsBefore, toTurns: bottomOf([run], face) }]
      : [],
  );
  return [...outside, ...inLegs].sort((a, b) => a.fromTurns - b.fromTurns);
}

const eventsOf = (scene: Scene): ChartEvent[] => scene.attempt.reader.legs.flatMap((leg) => legEvents(scene, leg));

function legEvents(scene: Scene, leg: Leg): ChartEvent[] {
  const target = scene.attempt.reader.targetOf(leg);
  return target === undefined ? drawEvents(scene, leg) : numberEvents(scene, leg, target);
}

function drawEvents(scene: Scene, leg: Leg): ChartEvent[] {
  const { opened, profile } = scene.attempt;
  if (!opened || leg.step !== profile.procedure.length) return [];
  return [eventAt(scene, leg, leg.to, { kind: "open", arrivals: 0, isArrival: false, error: null })];
}

/** The leg's run that comes to a position first; a mark just beyond a stop belongs to the run that stopped there. */
function runAt(scene: Scene, leg: Leg, position: Graduations): ChartRun | undefined {
  const s = signOf(leg.turn);
  const own = scene.runs.slice(leg.firstRun, leg.lastRun + 1).filter((run) => run.turn === leg.turn);
  return own.find((run) => s * (position - run.to) <= 0) ?? own.find((run) => run.to === leg.to) ?? own.at(-1);
}

function eventAt(
  scene: Scene,
  leg: Leg,
  position: Graduations,
  more: Pick<ChartEvent, "kind" | "arrivals" | "isArrival" | "error">,
): ChartEvent {
  const run = runAt(scene, leg, position);
  const turns = run === undefined ? 0 : turnsAt(run, position, scene.face);
  const id = more.kind === "arrival" ? `${leg.step}-arrival-${more.arrivals}` : `${leg.step}-${more.kind}`;
  return { id, position, turns, turn: leg.turn, step: leg.step, faults: [], ...more };
}

/** The number's marks in a leg, and its stop; an arrival that the leg stops on is told by the stop. */
function numberEvents(scene: Scene, leg: Leg, target: Target): ChartEvent[] {
  const s = signOf(leg.turn);
  const { perTurn, number, tolerance } = target;
  const error = stopError(leg.turn, leg.to, number, perTurn);
  const count = legArrivals(leg, target);
  // The last mark the leg came to: just ahead of a stop that is short within tolerance, else behind it.
  const lastMark = leg.to - s * (error >= -tolerance ? error : error + perTurn);
  const isStopped = scene.isOver || leg !== scene.attempt.reader.leg;
  const isOnStop = isStopped && Math.abs(error) <= tolerance;
  const first = Math.max(1, count - MOST_ARRIVALS);
  const numbers = Array.from({ length: Math.max(0, count - first + (isOnStop ? 0 : 1)) }, (_, k) => first + k);
  const marks = numbers.map((arrivals) =>
    eventAt(scene, leg, lastMark - s * (count - arrivals) * perTurn, {
      kind: "arrival",
      arrivals,
      isArrival: true,
      error: null,
    }),
  );
  const stop = { kind: "stop", arrivals: count, isArrival: isOnStop && count > 0, error } as const;
  return isStopped ? [...marks, eventAt(scene, leg, leg.to, stop)] : marks;
}

interface Anchor {
  readonly position: Graduations;
  readonly turns: number;
  readonly turn: Turn;
}

const endAnchor = ({ runs, face, turns }: Scene, index = runs.length - 1): Anchor => {
  const run = runs[index];
  return run === undefined
    ? { position: 0, turns, turn: "left" }
    : { position: run.to, turns: bottomOf([run], face), turn: run.turn };
};

/** The corner at which a leg was turned back; the one with this length, for a leg may have several. */
function turnbackAnchor(scene: Scene, leg: Leg, fault: WordedFault): Anchor {
  const index = scene.runs.findIndex(
    (run, k) =>
      k > leg.firstRun && k < leg.lastRun && run.turn !== leg.turn && Math.abs(run.to - run.from) === fault.size,
  );
  return endAnchor(scene, index < 0 ? leg.lastRun : index - 1);
}

/** Where a fault that no stop tells of is marked: at the end of the path, unless it has a place of its own. */
function anchorOf(scene: Scene, fault: WordedFault): Anchor {
  const { legs } = scene.attempt.reader;
  const leg = legs.find(({ step }) => step === fault.number - 1);
  if (fault.code === "wrong-way") {
    return legs[0] === undefined ? endAnchor(scene) : endAnchor(scene, legs[0].firstRun - 1);
  }
  return fault.code === "extra-turnback" && leg !== undefined ? turnbackAnchor(scene, leg, fault) : endAnchor(scene);
}

const AT_STOP = new Set([
  "too-few-turns",
  "too-many-turns",
  "stopped-short",
  "ran-past",
  "came-back",
  "paused-too-long",
]);

/** Hangs every fault on the event it was made at, or on one of its own. */
function withFaults(scene: Scene, events: readonly ChartEvent[], faults: readonly WordedFault[]): ChartEvent[] {
  const all = [...events];
  for (const fault of faults) {
    const atStop = all.findIndex(
      ({ kind, step }) => AT_STOP.has(fault.code) && kind === "stop" && step === fault.number - 1,
    );
    const anchor = anchorOf(scene, fault);
    const index = atStop >= 0 ? atStop : all.findIndex(({ kind, turns }) => kind === "fault" && turns === anchor.turns);
    const event = all[index];
    if (event !== undefined) all[index] = { ...event, faults: [...event.faults, fault] };
    else all.push(faultEvent(anchor, fault));
  }
  return all.sort((a, b) => a.turns - b.turns);
}

const faultEvent = (anchor: Anchor, fault: WordedFault): ChartEvent => ({
  ...anchor,
  id: `fault-${fault.code}-${fault.number}-${anchor.turns}`,
  kind: "fault",
  step: fault.number - 1,
  arrivals: 0,
  isArrival: false,
  error: null,
  faults: [fault],
});
