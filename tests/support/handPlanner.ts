import type { Attempt } from "../../src/dialing/attempt";
import type { DialingContext, DialingEvent, DialingState } from "../../src/dialing/dialingMachine";
import { drawLength } from "../../src/dialing/fault";
import { tellFaultsSoFar } from "../../src/dialing/faultWords";
import { idealMotion, stopAfter } from "../../src/dialing/idealMotion";
import { type Leg, legArrivals } from "../../src/dialing/leg";
import { distanceTo, type Run, runLength } from "../../src/dialing/runs";
import { type Graduations, type Milliseconds, opposite, signOf, type Turn } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { spinOffRule } from "../../src/lock/spinOffRule";

/** Where the chart says the hand is. */
export interface ChartState {
  readonly value: DialingState;
  readonly context: DialingContext;
}

/** What a plan starts from: the lock under the hand, and where the chart says that hand is. */
interface Scene {
  readonly attempt: Attempt;
  readonly state: ChartState;
}

/** A little way past a number; more than any stop tolerance of a shipped profile. */
const PAST = 3;
/** Turning back by so much is a run of its own, and far from a quarter turn. */
const BACK = 5;
/** A good deal more than a quarter turn of 100, and less than the draw from 26. */
const BEYOND_HESITATION = 30;
/** How far a hand pushes beyond the positive stop, and how far it comes back from it. */
const PUSH = 20;

const along = (turn: Turn, by: Graduations) => signOf(turn) * by;
const firstTurn = (profile: Profile): Turn => profile.procedure[0]?.turn ?? "left";
const currentTurn = ({ reader, profile }: Attempt): Turn => reader.runs.at(-1)?.turn ?? firstTurn(profile);

/** From one position to the next, each a move in one direction. */
const movesBetween = (positions: readonly Graduations[]) =>
  positions.slice(1).map((position, i) => position - (positions[i] ?? position));

const arrivalsOf = ({ reader }: Attempt, leg: Leg, run: Run) => {
  const target = reader.targetOf(leg);
  return target === undefined ? 0 : legArrivals(run, target);
};

/** On to the stop at the number being turned to: the next one at which its arrivals are made. */
function reachNumber({ attempt, state }: Scene): Graduations[] {
  const { reader, profile, combination, dial } = attempt;
  const { number } = state.context;
  const turn = profile.procedure[number]?.turn ?? "left";
  let stop = stopAfter(profile, combination, reader.leg?.from ?? dial, number);
  while (signOf(turn) * (stop - dial) <= 0) stop += along(turn, profile.graduations);
  return [stop - dial];
}

/** Turns back a little, having first made sure that the leg before it counts as one. */
function reverse({ attempt }: Scene): Graduations[] {
  const { reader } = attempt;
  const { leg } = reader;
  const turn = currentTurn(attempt);
  const isFirst = reader.legs.length < 2;
  const isPlain = leg !== undefined && leg.firstRun === leg.lastRun;
  const isShort = isPlain && runLength(leg) < BEYOND_HESITATION && arrivalsOf(attempt, leg, leg) === 0;
  const goOn = !isFirst && isShort && !leg.isJudged ? [along(turn, BEYOND_HESITATION - runLength(leg))] : [];
  return [...goOn, along(opposite(turn), BACK)];
}

/** Back again from a short turnback, exactly to where it began. */
function resume({ attempt }: Scene): Graduations[] {
  const { leg } = attempt.reader;
  return leg === undefined ? [] : [leg.from - attempt.dial];
}

/** One run long enough to start the attempt anew, and not a graduation longer: no number is reached by it. */
function startFresh({ attempt }: Scene): Graduations[] {
  const { reader, profile } = attempt;
  const turn = firstTurn(profile);
  const run = reader.runs.at(-1);
  const wanted = ((profile.procedure[0]?.arrivals ?? 1) - 1) * profile.graduations;
  if (run === undefined || run.turn !== turn) {
    // A wobble inside the run before does not count: the new run begins at that run's furthest point.
    return [(run?.to ?? attempt.dial) + along(turn, wanted) - attempt.dial];
  }
  const isOpener = reader.legs.length === 1 && reader.legs[0]?.firstRun === reader.runs.length - 1;
  if (!isOpener && runLength(run) < wanted) return [run.from + along(turn, wanted) - attempt.dial];
  // A long turn under a later number of an encoder lock may be going round again: there the hand stays with the first.
  const back = isOpener && profile.kind === "dial-encoder" ? BACK : BEYOND_HESITATION;
  return [along(opposite(turn), back), along(turn, wanted)];
}

const isAligned = ({ pack }: Attempt) => pack?.isAligned() ?? false;

/** What is left of the draw, from the last stop on; 0 before there is one. */
function restOfDraw({ reader, profile }: Attempt): Graduations {
  const { length } = profile.procedure;
  const stop = reader.legs.find((leg) => leg.step === length - 1)?.to;
  const draw = reader.legs.find((leg) => leg.step === length);
  return stop === undefined ? 0 : drawLength(profile, stop) - (draw === undefined ? 0 : runLength(draw));
}

/** A draw all its way, by a hand that first makes sure that it is in vain. */
function drawInVain({ attempt }: Scene): Graduations[] {
  const { profile, dial, reader } = attempt;
  const turn = profile.draw.turn;
  const stop = reader.legs.at(-2)?.to ?? dial;
  const isSound = attempt.pack === null ? tellFaultsSoFar(attempt).length === 0 : isAligned(attempt);
  if (!isSound) return [along(turn, restOfDraw(attempt))];
  // Back over the number it came from and past it: that carries the last wheel off, and spoils the last count.
  const spoiled = stop + along(opposite(turn), PAST);
  return [spoiled - dial, along(turn, drawLength(profile, spoiled))];
}

/** Retracts the bolt: by what is left of a sound draw, else by dialing the whole combination; and pushes on. */
function retract({ attempt, state }: Scene): Graduations[] {
  const { profile, combination, dial } = attempt;
  const turn = profile.draw.turn;
  const isSoundDraw = state.value === "drawing" && attempt.pack === null && tellFaultsSoFar(attempt).length === 0;
  if (isSoundDraw) return [along(turn, restOfDraw(attempt) + PUSH)];
  if (isAligned(attempt)) {
    const toMark = distanceTo(profile.draw.engageAt, dial, turn, profile.graduations);
    const drop = attempt.pack?.engagedAt ?? dial + along(turn, toMark);
    return [drop + along(turn, profile.draw.travel + PUSH) - dial];
  }
  // A run that already goes the first way is no fresh start however long it gets: it must end first.
  const isOpening = attempt.reader.runs.at(-1)?.turn === firstTurn(profile);
  const from = isOpening ? dial + along(opposite(firstTurn(profile)), BEYOND_HESITATION) : dial;
  return movesBetween([
    dial,
    ...(isOpening ? [from] : []),
    ...idealMotion(profile, combination, from, [], PUSH).slice(1),
  ]);
}

function spinOff({ attempt }: Scene): Graduations[] {
  const { profile } = attempt;
  return [along(opposite(profile.draw.turn), spinOffRule(profile).turns * profile.graduations)];
}

const PLANS: Readonly<Record<DialingEvent["type"], (scene: Scene, event: DialingEvent) => Graduations[]>> = {
  "run.begun": ({ attempt }, event) => {
    const turn = event.type === "run.begun" ? event.turn : firstTurn(attempt.profile);
    return [along(turn, BACK)];
  },
  "number.reached": reachNumber,
  "number.passed": ({ attempt }) => [along(currentTurn(attempt), PAST)],
  "turn.reversed": reverse,
  "turn.resumed": resume,
  "fresh.started": startFresh,
  "draw.refused": drawInVain,
  "bolt.retracted": retract,
  "bolt.thrown": ({ attempt }) => [along(opposite(attempt.profile.draw.turn), PUSH)],
  "lock.cleared": spinOff,
  // A rest: no motion, only time (see `restBefore`).
  "pause.exceeded": () => [0],
  // Not a matter of the hand: whoever drives the lock takes a new one.
  "attempt.restarted": () => [],
};

/**
 * How a hand must turn the dial for a fact to happen: whole graduations on a dial that stands at a whole one, so that
 * buttons can do it.
 *
 * @param attempt - the lock as it stands; it is only looked at
 * @param state - where the dialing chart is
 * @param event - an event that the chart takes in that state
 * @returns moves of the dial in order, graduations, left positive
 */
export function planMotion(attempt: Attempt, state: ChartState, event: DialingEvent): readonly Graduations[] {
  return PLANS[event.type]({ attempt, state }, event);
}

/** How long the hand rests before it makes a planned motion. */
export function restBefore(profile: Profile, event: DialingEvent): Milliseconds {
  const limit_s = profile.kind === "dial-encoder" ? (profile.pauseLimit_s ?? 0) : 0;
  return event.type === "pause.exceeded" ? limit_s * 1000 + 1000 : 100;
}
