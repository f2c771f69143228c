import { useMemo, useState } from "react";
import type { Attempt } from "../../../dialing/attempt";
import type { WordedFault } from "../../../dialing/faultWords";
import type { TimedMotion } from "../../../dialing/motion";
import { faceText } from "../../../dialing/words";
import { faceNumber, type Graduations, type Milliseconds } from "../../../lock/dial";
import { type ChartEvent, type ChartModel, chartModel } from "./chartEvents";
import { type ChartFrame, chartFrame, type Size, targetMarks, turnsShown } from "./chartFrame";
import type { Pixel } from "./nearestPoint";
import { layRecording, type Moment, momentAt, timeAtTurns } from "./recordedPath";
import { tellEvent, tellPointer } from "./told";
import {
  bottomOf,
  type ChartPoint,
  chartReading,
  type Face,
  faceReading,
  runsThrough,
  stackRuns,
  turnsAt,
} from "./turnPath";

/** What the chart is drawn from. */
export interface ChartInput {
  /** Mutable: `version` changes whenever it has changed. */
  readonly attempt: Attempt;
  readonly version: number;
  readonly faults: readonly WordedFault[];
  /** Stops of an ideal or best attempt to compare with, unwrapped graduations, the start first. */
  readonly ghost: readonly Graduations[] | null;
  /** Set once the attempt is over and can be replayed. */
  readonly recording: TimedMotion | null;
  readonly playhead_ms: Milliseconds | null;
  /** Whether readings and sizes are told; arrivals and names of faults always are. */
  readonly hasFigures?: boolean;
}

/** Where the dial stands at the end of the path, a wobble back along it included. */
function tipOf({ dial }: Attempt, { runs }: ChartModel, face: Face): ChartPoint {
  const last = runs.at(-1);
  return last === undefined
    ? { reading: faceReading(dial, face), turns: 0 }
    : { reading: chartReading(dial, last.turn, face), turns: turnsAt(last, dial, face) };
}

function pointOf(moment: Moment | null, { runs }: ChartModel, face: Face): ChartPoint | null {
  if (moment === null) return null;
  const run = runs.findLast(({ turnsBefore }) => turnsBefore <= moment.turns) ?? runs[0];
  return { reading: chartReading(moment.position, run?.turn ?? "left", face), turns: moment.turns };
}

function useFace({ profile }: Attempt): Face {
  const { graduations, numbersIncrease } = profile;
  return useMemo(() => ({ perTurn: graduations, numbersIncrease }), [graduations, numbersIncrease]);
}

function useModel({ attempt, version, faults, recording }: ChartInput, face: Face): ChartModel {
  const isOver = recording !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the attempt is mutable, and its version tells of it.
  return useMemo(() => chartModel(attempt, faults, face, isOver), [attempt, version, faults, face, isOver]);
}

function useTargets({ profile, combination }: Attempt, face: Face, width: number) {
  return useMemo(() => {
    const numbers = combination.map((number) => ({
      at: faceNumber(number, face.perTurn, face.numbersIncrease),
      text: faceText(number, profile),
    }));
    return targetMarks(numbers, width, face);
  }, [profile, combination, face, width]);
}

/** What the pointer or the keyboard asks for: the pointer, as long as it is on the chart. */
function useTold(model: ChartModel, frame: ChartFrame, attempt: Attempt, hasFigures: boolean) {
  const [pointer, setPointer] = useState<Pixel | null>(null);
  const [focusedId, setFocusedId] = useState<string | null>(null);
  const focused = model.events.find(({ id }) => id === focusedId);
  const pointed = pointer && tellPointer(model, pointer, attempt, frame, hasFigures);
  const told = pointed ?? (focused === undefined ? null : tellEvent(focused, attempt, frame, hasFigures));
  return { told, pointed, isSpoken: pointed === null && focused !== undefined, setPointer, setFocusedId };
}

/**
 * Everything the turn chart shows at this moment.
 *
 * @param size - room for the drawing, pixels; the same object as long as it is the same size
 * @param onScrub - told the time of a point of the path that was chosen in a replay
 */
export function useChart(input: ChartInput, size: Size, onScrub: (time_ms: Milliseconds) => void) {
  const { attempt, recording, playhead_ms, hasFigures = true } = input;
  const face = useFace(attempt);
  const model = useModel(input, face);
  const ghost = useMemo(() => stackRuns(runsThrough(input.ghost ?? []), face), [input.ghost, face]);
  const targets = useTargets(attempt, face, size.width);
  const turns = turnsShown(model.turns, bottomOf(ghost, face));
  const frame = useMemo(() => chartFrame(size, turns, face), [size, turns, face]);
  const laid = useMemo(
    () => recording && layRecording(recording, model.runs, face, attempt.profile.turnback),
    [recording, model.runs, face, attempt],
  );
  const moment = laid === null || playhead_ms === null ? null : momentAt(laid, playhead_ms);
  const { told, pointed, isSpoken, setPointer, setFocusedId } = useTold(model, frame, attempt, hasFigures);
  const scrubTo = (turns: number | undefined) => {
    if (laid !== null && turns !== undefined) onScrub(timeAtTurns(laid, turns));
  };
  return {
    model,
    told,
    isSpoken,
    /** Where the dial stands in the replay, unwrapped graduations; at rest, where the recording begins. */
    dial: moment?.position ?? laid?.moments[0]?.position ?? attempt.dial,
    plot: {
      model,
      frame,
      targets,
      lock: attempt,
      hasFigures,
      ghost,
      tip: recording === null ? tipOf(attempt, model, face) : null,
      playhead: pointOf(moment, model, face),
      pointed,
      onPointer: setPointer,
      onChoosePointed: () => scrubTo(pointed?.turns),
      onFocus: setFocusedId,
      onChoose: (event: ChartEvent) => scrubTo(event.turns),
    },
  };
}
