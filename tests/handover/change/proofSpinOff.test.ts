import { expect, test } from "vitest";
import { idealMotion } from "../../../src/dialing/idealMotion";
import { Proof } from "../../../src/handover/change/proof";
import { shippedProfile } from "../../../src/lock/shippedProfiles";

const PROFILE = shippedProfile("two-wheel");
const NUMBERS = PROFILE.asSet ?? [];

/** A proof whose lock has been opened once. */
function opened(): Proof {
  const proof = new Proof(PROFILE, NUMBERS, NUMBERS, { dial: 0, slack: [0, 0] });
  dial(proof);
  expect([proof.opened, proof.attempt.retraction]).toEqual([1, 1]);
  return proof;
}

function dial(proof: Proof): void {
  for (const stop of idealMotion(PROFILE, NUMBERS, proof.attempt.dial, [], 1).slice(1)) {
    proof.turnBy(stop - proof.attempt.dial);
  }
}

const AWAY = PROFILE.draw.turn === "right" ? 1 : -1;

test("the spin-off that is asked for begins no entry: it counts down over four turns, and then the next try begins", () => {
  const proof = opened();
  const before = proof.attempt;
  for (let turned = 0; turned < 3.5 * PROFILE.graduations; turned += 10) proof.turnBy(10 * AWAY);
  expect(proof.attempt).toBe(before);
  expect(proof.mustSpinOff).toBe(true);
  expect(Math.ceil(proof.attempt.spinOff?.turnsLeft ?? 0)).toBe(1);
  for (let turned = 0; turned < PROFILE.graduations; turned += 10) proof.turnBy(10 * AWAY);
  expect(proof.mustSpinOff).toBe(false);
  expect(proof.attempt).not.toBe(before);
  dial(proof);
  expect([proof.opened, proof.refused]).toEqual([2, 0]);
});

test("whoever dials after a short spin-off is read all the same, and turning straight back proves nothing", () => {
  const proof = opened();
  for (let turned = 0; turned < 150; turned += 10) proof.turnBy(10 * AWAY);
  for (const stop of idealMotion(PROFILE, NUMBERS, proof.attempt.dial, [], 1).slice(1)) {
    const by = stop - proof.attempt.dial;
    for (let left = Math.abs(by); left > 1e-9; left -= 2) proof.turnBy(Math.sign(by) * Math.min(2, left));
  }
  expect(proof.opened).toBe(2);
  proof.turnBy(18 * AWAY);
  proof.turnBy(-60 * AWAY);
  expect(proof.opened).toBe(2);
});
