import { type Graduations, signOf, type Turn } from "../lock/dial";
import { exact } from "../lock/exact";
import { FARTHEST } from "../lock/wheelPackState";
import type { Attempt } from "./attempt";
import { isFirstRun } from "./freshReading";
import type { HandReader } from "./handReader";
import { mayBeBack, REST_DRIFT } from "./restWatch";
import { type Run, runLength } from "./runs";

/*
 * A recording has some forty moves, and in most of them the hand only goes on the way it goes. Lock and reading then come
 * to the same whether they are told of every move or of the last alone. This says when that is certain; whatever may
 * begin, be judged, be answered or be timed on the way is played move by move.
 */

/** Moves shorter than this may be a rest, whose beginning matters, graduations. */
const NO_REST = 2 * REST_DRIFT;

/**
 * How far an attempt can be taken in one move.
 *
 * @param hand - where the hand holds the dial, graduations
 * @param from - index in `positions` of the next move's end
 * @param count - positions to look at
 * @returns index of the position to turn to, `from` or later
 */
export function coastsTo(
  attempt: Attempt,
  hand: Graduations,
  positions: readonly Graduations[],
  from: number,
  count: number,
  isTimed: boolean,
): number {
  const at = positions[from] ?? hand;
  const way = at >= hand ? 1 : -1;
  const least = isTimed ? NO_REST : 0;
  if (!((at - hand) * way > least)) return from;
  const room = coastingRoom(attempt, way > 0 ? "left" : "right", isTimed);
  return room > 0 ? lastWithin(positions, from, count, { hand, way, least, room }) : from;
}

/** A stretch of a motion in one direction: where it begins, which way it goes, and what its moves must keep to. */
interface Stretch {
  readonly hand: Graduations;
  readonly way: 1 | -1;
  /** Every move is longer than this, graduations. */
  readonly least: Graduations;
  /** The moves together are shorter than this, graduations. */
  readonly room: Graduations;
}

function lastWithin(positions: readonly Graduations[], from: number, count: number, stretch: Stretch): number {
  const { hand, way, least, room } = stretch;
  let last = from;
  let at = positions[from] ?? hand;
  while (last + 1 < count) {
    const next = positions[last + 1] ?? at;
    if (!((next - at) * way > least && (next - hand) * way < room)) break;
    at = next;
    last += 1;
  }
  return last;
}

/** How far the dial can turn on before anything but that may happen, graduations; 0 where that is not known. */
function coastingRoom(attempt: Attempt, turn: Turn, isTimed: boolean): Graduations {
  const { reader, dial } = attempt;
  const { leg } = reader;
  const run = reader.runs.at(-1);
  if (run === undefined || leg === undefined || reader.isClosed) return 0;
  const isGoingOn = run.turn === turn && run.to === dial && leg.turn === turn && leg.to === dial;
  if (!isGoingOn || leg.step >= attempt.profile.procedure.length) return 0;
  if (isTimed && mayComeBack(attempt)) return 0;
  if (attempt.pack === null && mayDraw(attempt, run)) return 0;
  return Math.min(FARTHEST - dial * signOf(turn), roomBeforeFresh(reader, run));
}

/** Whether the dial may come to rest on the number that the leg before ran past. */
function mayComeBack({ reader, dial }: Attempt): boolean {
  const before = reader.legs.at(-2);
  const target = before && reader.targetOf(before);
  return before !== undefined && target !== undefined && mayBeBack(before, target, dial);
}

/** Whether a run has yet to come where an encoder lock looks at what it draws, or is past it and coupled. */
const mayDraw = ({ profile, isCoupled }: Attempt, run: Run): boolean =>
  isCoupled || (run.turn === profile.draw.turn && runLength(run) <= exact(profile.draw.travel));

/** How far a run can go on before it clears the lock, graduations; 0 where that is not certain. */
function roomBeforeFresh(reader: HandReader, run: Run): Graduations {
  if (reader.forgottenAt !== null) return 0;
  if (isFirstRun(reader) || run.turn !== reader.profile.procedure[0]?.turn) return Infinity;
  return reader.freshLength - runLength(run);
}
