import type { Graduations, Milliseconds, Turn } from "../lock/dial";
import type { DialEncoderProfile, ZeroingParameterRules } from "../lock/profile";

/** What a zero calibration asks of the hand. */
export interface ZeroingRules {
  /** Which direction is read first, and which then. */
  readonly order: readonly [Turn, Turn];
  /** Accepted readings that close a series, an integer >= 2. */
  readonly wanted: number;
  /** Accepted readings after which a series that has not settled ends as not set, >= wanted. */
  readonly most: number;
  /** Largest spread (max - min) of the last `wanted` readings of a series that closes, graduations. */
  readonly spreadLimit: Graduations;
  /** Largest deviation from the index line that still is a reading, graduations. */
  readonly captureWindow: Graduations;
  /** Turning in the asked direction that must lead up to a reading, graduations. */
  readonly approach: Graduations;
  /** How long the dial must have been at rest, milliseconds. */
  readonly rest_ms: Milliseconds;
  /** Largest error of a zero that is good enough, graduations. */
  readonly tolerance: Graduations;
  /** Highest risk of a wrong verdict either way, in (0, 0.5). */
  readonly risk: number;
  /** Whether a miss costs the whole series, so that the readings must be made in a row. */
  readonly consecutive: boolean;
}

/**
 * Rules for a dial where nothing else is asked: three readings turning right, then three turning left (common
 * practice, no source); the rest are training values.
 *
 * @param perTurn - graduations in one turn
 */
export function usualRules(perTurn: number): ZeroingRules {
  return {
    order: ["right", "left"],
    wanted: 3,
    most: 8,
    spreadLimit: 0.6,
    captureWindow: 1.5,
    approach: perTurn / 4,
    rest_ms: 400,
    tolerance: 0.5,
    risk: 0.05,
    consecutive: false,
  };
}

/** The usual numbers of readings, stretched so far as the ones given ask for. */
function counts({ wanted, most }: ZeroingParameterRules, usual: ZeroingRules): Pick<ZeroingRules, "wanted" | "most"> {
  return {
    wanted: wanted ?? Math.min(usual.wanted, most ?? usual.wanted),
    most: most ?? Math.max(usual.most, wanted ?? usual.most),
  };
}

/** The rules of a lock: the usual ones, and over them what its profile asks for. */
export function profileRules({ graduations, zeroing }: DialEncoderProfile): ZeroingRules {
  const usual = usualRules(graduations);
  const asked = zeroing?.rules ?? {};
  const given = Object.fromEntries(Object.entries(asked).filter(([, value]) => value !== undefined));
  return { ...usual, ...given, ...counts(asked, usual) };
}
