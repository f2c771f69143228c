import type { Attempt } from "../../../dialing/attempt";
import { faceText, readingText } from "../../../dialing/words";
import { faceNumber, type Graduations, reading, type Turn } from "../../../lock/dial";
import type { WheelPack } from "../../../lock/wheelPack";

/** One wheel of the pack, as the cutaway shows it. */
export interface CutawayWheel {
  /** 1 for the wheel that carries the first number. */
  readonly wheel: number;
  /** Its number of the combination, as the face shows it. */
  readonly number: string;
  /** Where it stands, as the face shows it: in [0, one turn). */
  readonly stand: Graduations;
  /** How far its gate is off the fence, graduations in (-half a turn, half a turn], left positive. */
  readonly error: Graduations;
  /** Whether its gate stands under the fence. */
  readonly isTrue: boolean;
  /** How far its gate may be off and still be true, graduations. */
  readonly gateTolerance: Graduations;
  /** How far it leads its driver, graduations in [0, freePlay]. */
  readonly slack: Graduations;
  readonly freePlay: Graduations;
  /** Which way its driver carries it, or null while it is at rest. */
  readonly driven: Turn | null;
}

/** The drive cam, which turns with the dial. */
export interface CutawayCam {
  /** Unwrapped dial position, graduations. */
  readonly position: Graduations;
  /** Reading to a tenth, as the face shows it. */
  readonly reading: string;
  /** How far its gate is past the nose, graduations, left positive, unwrapped. */
  readonly pastNose: Graduations;
  /** Which way it carries the last wheel, or null while it turns free of it. */
  readonly driving: Turn | null;
}

/** The change key of a pack, as the cutaway shows it. */
export interface CutawayKey {
  readonly place: "out" | "in" | "turned";
  /** How far each wheel's key hole stands from the key port, graduations, left positive, wheel 1 first. */
  readonly errors: readonly Graduations[];
  /** Where the port lies from where the holes are while the gates stand under the fence, graduations, left positive. */
  readonly port: Graduations;
}

/** What the cutaway needs of a lock: an attempt has it, and a pack that is being changed. */
export interface CutawayLock extends Pick<Attempt, "profile" | "dial" | "isCoupled" | "retraction"> {
  readonly reader: Pick<Attempt["reader"], "runs">;
  readonly pack: Pick<WheelPack, "profile" | "combination" | "stands" | "errors" | "slack"> | null;
}

/** The inside of a lock at one moment: plain data. */
export interface CutawayView {
  /** Wheel 1 first; empty in a lock without wheels. */
  readonly wheels: readonly CutawayWheel[];
  readonly cam: CutawayCam;
  readonly perTurn: number;
  readonly numbersIncrease: Turn;
  readonly draw: { readonly turn: Turn; readonly travel: Graduations };
  /** Whether the lever nose is in the cam gate. */
  readonly isNoseDown: boolean;
  /** How far the bolt is drawn back: 0 thrown, 1 retracted. */
  readonly retraction: number;
}

/** A joint closer than this to the end of its play has met, graduations: sums of positions are rounded. */
const MET: Graduations = 1e-6;

/** What the cutaway shows of a lock. */
export function cutawayView(attempt: CutawayLock): CutawayView {
  const { pack, profile, dial } = attempt;
  const wheels = pack === null ? [] : wheelsOf(pack, attempt.reader.runs.at(-1)?.turn ?? null);
  return {
    wheels,
    cam: {
      position: dial,
      reading: readingText(reading(dial, profile.graduations), profile),
      pastNose: dial - profile.draw.engageAt,
      driving: wheels.at(-1)?.driven ?? null,
    },
    perTurn: profile.graduations,
    numbersIncrease: profile.numbersIncrease,
    draw: { turn: profile.draw.turn, travel: profile.draw.travel },
    isNoseDown: attempt.isCoupled,
    retraction: attempt.retraction,
  };
}

function wheelsOf(pack: NonNullable<CutawayLock["pack"]>, turn: Turn | null): CutawayWheel[] {
  const { profile, combination } = pack;
  const { freePlay, gateTolerance } = profile.wheelPack;
  const stands = pack.stands();
  const errors = pack.errors();
  const slack = pack.slack();
  const carried = carriedFrom(slack, freePlay, turn);
  return combination.map((number, k) => {
    const error = errors[k] ?? 0;
    const tolerance = gateTolerance[k] ?? 0;
    return {
      wheel: k + 1,
      number: faceText(number, profile),
      stand: faceNumber(stands[k] ?? 0, profile.graduations, profile.numbersIncrease),
      error,
      isTrue: Math.abs(error) <= tolerance,
      gateTolerance: tolerance,
      slack: slack[k] ?? 0,
      freePlay: freePlay[k] ?? 0,
      driven: k >= carried ? turn : null,
    };
  });
}

/**
 * Index of the farthest wheel that the cam carries along. A joint may stand met behind one that is not: its wheel is
 * at rest all the same, so the joints are followed from the cam outward.
 */
function carriedFrom(slack: readonly number[], freePlay: readonly number[], turn: Turn | null): number {
  let first = slack.length;
  while (first > 0 && isMet(slack[first - 1] ?? 0, freePlay[first - 1] ?? 0, turn)) first--;
  return first;
}

function isMet(slack: Graduations, freePlay: Graduations, turn: Turn | null): boolean {
  if (turn === null) return false;
  return turn === "left" ? slack <= MET : freePlay - slack <= MET;
}
