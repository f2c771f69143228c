import type table from "../../shared/fitting.json";
import type { Graduations, Milliseconds, Turn } from "./dial";

/** One number of the procedure: which way, and how often the number comes to the index. */
export interface Step {
  readonly turn: Turn;
  /** Times the number arrives at the index, the stop included; an integer >= 1. */
  readonly arrivals: number;
  readonly rule: "at-least" | "exactly";
}

/** The last turn, which retracts the bolt. */
export interface Draw {
  readonly turn: Turn;
  /** Reading at which the lever nose can drop, graduations. Wheel packs only; an encoder lock draws from its last stop. */
  readonly engageAt: Graduations;
  /** Turning that retracts the bolt, graduations, > 0. */
  readonly travel: Graduations;
  /** Whether the retracted bolt holds the dial. Always so in a wheel pack. */
  readonly positiveStop: boolean;
}

/** Rules for choosing numbers; a key left out means no such rule. Their wording and sources are in `src/drill`. */
export interface CombinationRules {
  /** Least distance between every two numbers, graduations. */
  readonly minSeparation?: number | undefined;
  /** Whether that distance goes the shorter way round the dial. */
  readonly circular?: boolean | undefined;
  /** Closed ranges that the last number may not be in. */
  readonly excludedLast?: readonly (readonly [number, number])[] | undefined;
  readonly noStraight?: boolean | undefined;
  readonly notAllEven?: boolean | undefined;
  readonly notAllOdd?: boolean | undefined;
  readonly multiplesOfTen?: "numbers" | "differences" | undefined;
  readonly oneFromEachThird?: boolean | undefined;
  /** Numbers, or closed ranges of them, that are allowed nowhere: a site's own exclusions. */
  readonly excluded?: readonly (number | readonly [number, number])[] | undefined;
}

/** Names a size of a lock's fit; its unit is in the name, graduations or none where there is none. */
export type SizeName = keyof typeof table.sizes;

interface AnyProfile {
  readonly id: string;
  readonly title: string;
  /** What it is called where there is little room; by its title where left out. */
  readonly short?: string | undefined;
  /** Marks in one turn of the dial; an integer in [10, 200]. */
  readonly graduations: number;
  readonly numbersIncrease: Turn;
  /** One step a number, in dialing order; directions alternate. */
  readonly procedure: readonly Step[];
  readonly draw: Draw;
  /** How far a stop may lie from its number and still count, graduations. */
  readonly stopTolerance: Graduations;
  /** Coming back by more than this ends a run, graduations. */
  readonly turnback: Graduations;
  readonly combinationRules: CombinationRules;
  /** The combination the training lock comes with; invented. */
  readonly asSet?: readonly number[] | undefined;
  /** Sizes of its parts and limits of a good fit; of what is left out, the training values. */
  readonly fitting?: { readonly [Name in SizeName]?: number | undefined } | undefined;
}

/** A lock whose wheels drag each other round. */
export interface WheelPackProfile extends AnyProfile {
  readonly kind: "wheel-pack";
  readonly wheelPack: {
    /** Play of each wheel's drive, wheel 1 first, graduations in [0, one turn]. */
    readonly freePlay: readonly Graduations[];
    /** How far each gate may stand off the fence, wheel 1 first, graduations. */
    readonly gateTolerance: readonly Graduations[];
  };
  /** How the combination is changed, where the pack takes a change key. */
  readonly changing?: ChangingParameters | undefined;
}

/** The second index on the ring, at which the combination is dialed when it is changed with a key. */
export interface ChangingParameters {
  /** Where the changing index stands off the opening index, graduations, left positive, in (-half a turn, half a turn]. */
  readonly index: Graduations;
  /** How far a wheel may stand off and still take the key, graduations, > 0. */
  readonly keyTolerance: Graduations;
}

/** What an encoder lock does about wrong tries. */
export interface WrongTryPolicy {
  readonly tries: number;
  readonly wait_s: number;
}

/** An electronic lock that reads turns of its dial. */
export interface DialEncoderProfile extends AnyProfile {
  readonly kind: "dial-encoder";
  /** Longest rest within an attempt, seconds; after it the lock forgets what was dialed. */
  readonly pauseLimit_s?: number | undefined;
  readonly wrongTry?: WrongTryPolicy | undefined;
  readonly zeroing?: ZeroingParameters | undefined;
}

/** A closed range, low end first, graduations. */
export type Range = readonly [Graduations, Graduations];

/**
 * What a training lock hides from the trainee who sets its zero, and what it asks of his hand.
 *
 * Whatever is left out is as usual; what that is, `src/zeroing` knows.
 */
export interface ZeroingParameters {
  /** Where the opening index may stand off its true place, left positive. */
  readonly indexOffset?: Range | undefined;
  /** Play between dial and cam, from 0 to 2. */
  readonly lostMotion?: Range | undefined;
  /** Standard deviation of what the encoder adds to a reading of its own. */
  readonly noise?: Range | undefined;
  /** How far the ring may creep while it is clamped, left positive. */
  readonly ringCreep?: Range | undefined;
  readonly rules?: ZeroingParameterRules | undefined;
}

/** Rules of the calibration that differ from the usual ones; their meaning is told in `src/zeroing/zeroingRules.ts`. */
export interface ZeroingParameterRules {
  readonly order?: readonly [Turn, Turn] | undefined;
  readonly wanted?: number | undefined;
  readonly most?: number | undefined;
  readonly spreadLimit?: Graduations | undefined;
  readonly captureWindow?: Graduations | undefined;
  readonly approach?: Graduations | undefined;
  readonly rest_ms?: Milliseconds | undefined;
  readonly tolerance?: Graduations | undefined;
  readonly risk?: number | undefined;
  readonly consecutive?: boolean | undefined;
}

/** A generic family of lock; never a product. */
export type Profile = WheelPackProfile | DialEncoderProfile;
