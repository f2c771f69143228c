import { least } from "d3-array";
import { signOf } from "../../../lock/dial";
import type { ChartEvent, ChartModel } from "./chartEvents";
import type { ChartFrame } from "./chartFrame";
import { eventDetail, eventName, type Lock, pointText, stopText } from "./chartWords";
import { type Pixel, pointUnder } from "./nearestPoint";
import { chartReading, passesOf } from "./turnPath";

/** What the readout tells, and where on the chart it is. */
interface Told {
  readonly name: string;
  readonly detail: string;
  /** Number on the face, graduations. */
  readonly reading: number;
  readonly turns: number;
}

/** Distance at which the pointer takes an event rather than the path, pixels. */
const REACH = 9;

/** Tells of an event. */
export function tellEvent(event: ChartEvent, lock: Lock, { face }: ChartFrame, hasFigures: boolean): Told {
  return {
    name: eventName(event, lock, hasFigures),
    detail: eventDetail(event, hasFigures),
    reading: chartReading(event.position, event.turn, face),
    turns: event.turns,
  };
}

function eventUnder(events: readonly ChartEvent[], pointer: Pixel, frame: ChartFrame) {
  const away = ({ position, turn, turns }: ChartEvent) =>
    Math.hypot(frame.xOf(chartReading(position, turn, frame.face)) - pointer.x, frame.yOf(turns) - pointer.y);
  return least(
    events.filter((event) => away(event) <= REACH),
    away,
  );
}

/**
 * Tells of what is under the pointer: an event, or else the nearest point of the path and the stop it leads to.
 *
 * @param pointer - pixels on the chart
 * @param hasFigures - whether readings and sizes may be told
 * @returns null away from the path
 */
export function tellPointer(
  model: ChartModel,
  pointer: Pixel,
  lock: Lock,
  frame: ChartFrame,
  hasFigures: boolean,
): Told | null {
  const event = eventUnder(model.events, pointer, frame);
  if (event !== undefined) return tellEvent(event, lock, frame, hasFigures);
  // A point of the path has nothing but figures.
  if (!hasFigures) return null;
  const near = pointUnder(
    model.runs.slice(model.top).flatMap((run) => passesOf(run, frame.face)),
    pointer,
    frame,
  );
  const run = near && model.runs.findLast(({ turnsBefore }) => turnsBefore <= near.turns);
  if (!near || !run) return null;
  const position = run.from + signOf(run.turn) * (near.turns - run.turnsBefore) * frame.face.perTurn;
  const stop = model.events.find(({ kind, turns }) => kind === "stop" && turns >= near.turns);
  return {
    name: pointText(position, run.turn, near.turns, lock),
    detail: stopText(stop, lock),
    reading: near.reading,
    turns: near.turns,
  };
}
