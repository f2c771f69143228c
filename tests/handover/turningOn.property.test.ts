import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { createActor } from "xstate";
import { type DialingEvent, dialingMachine } from "../../src/dialing/dialingMachine";
import { idealMotion } from "../../src/dialing/idealMotion";
import { drawCombination } from "../../src/drill/combinations/drawCombination";
import { EncoderChange } from "../../src/handover/change/encoderChange";
import { Proof } from "../../src/handover/change/proof";
import { DoorLock } from "../../src/handover/run/doorLock";
import type { Combination } from "../../src/lock/combination";
import { type Graduations, signOf } from "../../src/lock/dial";
import type { DialEncoderProfile, Profile } from "../../src/lock/profile";
import { shippedProfile } from "../../src/lock/shippedProfiles";
import { LockTrain } from "../../src/lock/train/lockTrain";
import { seededChance } from "../../src/statistics/chance";

const ENCODER = shippedProfile("dial-encoder") as DialEncoderProfile;
const PACKS = ["three-wheel", "fixed-pin", "small-three-wheel"].map(shippedProfile);

/** A lock that is dialed again and again: it says how often its numbers have opened it, as dialed by a hand. */
interface Dialed {
  readonly dial: () => Graduations;
  readonly turn: (by: Graduations) => void;
  readonly openings: () => number;
}

function proofOf(profile: Profile, numbers: Combination): Dialed {
  const proof = new Proof(profile, numbers, numbers, { dial: 0 });
  const dial = () => proof.attempt.dial;
  return { dial, turn: (by) => void proof.turnBy(by), openings: () => proof.opened };
}

function doorOf(profile: Profile, numbers: Combination): Dialed {
  const hand = new LockTrain({ indexOffset: 0, lostMotion: 0, start: 0 }, profile.graduations);
  const kept = { meant: numbers, setTo: numbers, dial: 0, isOpen: false, isHeld: false };
  const zero = profile.kind === "dial-encoder" ? { right: 0, left: 0 } : null;
  const lock = new DoorLock(profile, hand, kept, zero);
  let opened = 0;
  const turn = (by: Graduations) => {
    opened += lock.turnBy(by).filter((happening) => happening === "opened").length;
  };
  return { dial: () => lock.hand.seen, turn, openings: () => opened };
}

function changeOf(_: Profile, numbers: Combination): Dialed {
  const change = new EncoderChange(ENCODER, numbers, [10, 61, 35], { dial: 0 });
  const chart = createActor(dialingMachine(ENCODER)).start();
  let opened = 0;
  const turn = (by: Graduations) => {
    const facts = change.turnBy(by);
    for (const fact of facts) chart.send(fact as DialingEvent);
    const came = facts.some(({ type }) => type === "present.opened");
    // A chart that is told has followed the hand.
    if (came) expect(chart.getSnapshot().value).toBe("open");
    opened += came ? 1 : 0;
  };
  return { dial: () => change.dial, turn, openings: () => opened };
}

describe.each([
  ["the present combination of an encoder", ENCODER, changeOf] as const,
  ...[ENCODER, ...PACKS].flatMap((profile) => [
    [`a proof of ${profile.id}`, profile, proofOf] as const,
    [`a door with ${profile.id}`, profile, doorOf] as const,
  ]),
])("%s", (_, profile, lockOf) => {
  test("opens to every perfect dialing after an opening, however far the hand has turned on", () => {
    const { graduations, draw } = profile;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4 * 6 * graduations }).map((quarters) => quarters / 4),
        fc.constantFrom(0.75, 3, 37, 10_000),
        fc.nat(),
        (on, moves, seed) => {
          const numbers = drawCombination(profile, seededChance(seed));
          const { dial, turn, openings } = lockOf(profile, numbers);
          const go = (by: Graduations) => {
            for (let left = Math.abs(by); left > 0; left -= moves) turn(Math.sign(by) * Math.min(moves, left));
          };
          const dialIt = () => {
            for (const stop of idealMotion(profile, numbers, dial(), [], 2).slice(1)) go(stop - dial());
          };
          dialIt();
          expect(openings()).toBe(1);
          go(-signOf(draw.turn) * on);
          dialIt();
          expect(openings()).toBe(2);
        },
      ),
      { numRuns: 100 },
    );
  });
});
