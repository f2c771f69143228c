import { doorJoints, type Fit } from "../../../../../fitting/fit";
import type { DoorLock } from "../../../../../handover/run/doorLock";
import type { Graduations } from "../../../../../lock/dial";
import type { Profile } from "../../../../../lock/profile";
import type { LearnedZero } from "../../../../../lock/train/learnedZero";
import { seededChance } from "../../../../../statistics/chance";
import { learnZero } from "../../../../../zeroing/learnedZero";
import { profileCreep } from "../../../../../zeroing/ringClamp";
import { profileRules, usualRules } from "../../../../../zeroing/zeroingRules";
import { profileRanges } from "../../../../../zeroing/zeroLock";
import { ZeroingSession, type ZeroingSetup } from "../../../zeroing/session/zeroingSession";
import type { KeptDoor } from "./keptRun";

/** A loose ring stands visibly off, on either side; a training value. */
const PACK_RANGES = { indexOffset: [2, 3.5], lostMotion: [0, 0], noise: [0, 0] } as const;

/** How far the index may stand off its line and count as aligned, graduations; a training value. */
export const TRUE_RING = 0.5;

function setupOf(profile: Profile, fit: Fit | null): ZeroingSetup {
  const { graduations } = profile;
  const fitted = fit === null ? undefined : doorJoints(fit, graduations);
  return profile.kind === "wheel-pack"
    ? { graduations, rules: usualRules(graduations), ranges: { ...PACK_RANGES, fitted }, creep: [-0.2, 0.2] }
    : {
        graduations,
        rules: profileRules(profile),
        ranges: { ...profileRanges(profile), indexOffset: PACK_RANGES.indexOffset, fitted },
        creep: profileCreep(profile),
      };
}

/**
 * Ring, dial and cam of the lock on the door, with what its zeroing has come to; the same seed gives the same lock.
 *
 * @param fit - as it was made in the run; its joints are drawn where null
 * @param hand - where the dial stands, unwrapped graduations; where the seed puts it where left out
 */
export function doorZeroing(
  profile: Profile,
  seed: number,
  kept: KeptDoor | undefined,
  fit: Fit | null = null,
  hand?: Graduations,
): ZeroingSession {
  const session = new ZeroingSession(setupOf(profile, fit), seededChance(seed));
  if (kept === undefined) return session;
  if (hand !== undefined) session.lock.turnBy(hand - session.lock.dial);
  session.takeHold();
  session.lock.ringTurn = kept.ringTurn;
  if (!kept.isClamped) return session;
  session.chart.send({ type: "ring.clamped" });
  for (const side of session.setup.rules.order) {
    for (const reading of kept.accepted[side]) session.chart.send({ type: "reading.accepted", reading });
  }
  return session;
}

/** The zero that a lock has learned, or null while a side is open. */
export function learnedBy(session: ZeroingSession): LearnedZero | null {
  return session.state === "zeroSet" ? learnZero(session.memory.accepted) : null;
}

/** A simulated hand turns the ring true, and clamps it. */
export function alignRing(session: ZeroingSession): void {
  session.turnRing(-session.lock.indexError);
  session.clampRing();
}

/** A simulated hand takes the readings of the side that is open, within the window. */
export function readSide(session: ZeroingSession): void {
  const side = session.asked;
  const { approach, wanted } = session.setup.rules;
  if (side === null) return;
  const sign = side === "left" ? 1 : -1;
  for (let k = 0; k < wanted && session.asked === side; k++) {
    const at = 10_000 * k;
    session.takeHold();
    session.moved(-sign * (approach + 10), at);
    session.moved(-session.lock.seenDeviation - sign * (approach + 5), at + 1000);
    session.moved(sign * (approach + 5) + 0.1 * (k - 1), at + 2000);
    // Where friction held the dial back, the hand that watches the mark turns on.
    if (session.lock.ahead !== 0) session.moved(0.1 * (k - 1) - session.lock.seenDeviation, at + 3000);
    session.takeReading(at + 5000);
  }
}

/** The lock on the door with its ring and zero, to be kept. */
export function keptDoor(doorLock: DoorLock, { memory, lock, state }: ZeroingSession): KeptDoor {
  const { meant, setTo, slack, ...rest } = doorLock.kept;
  const { right, left } = memory.accepted;
  return {
    lock: { ...rest, meant: [...meant], setTo: setTo && [...setTo], ...(slack && { slack: [...slack] }) },
    ringTurn: lock.ringTurn,
    isClamped: state !== "ringLoose",
    accepted: { right: [...right], left: [...left] },
  };
}
