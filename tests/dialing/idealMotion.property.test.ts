import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { tellFaults } from "../../src/dialing/faultWords";
import { idealMotion } from "../../src/dialing/idealMotion";
import { drawCombination } from "../../src/drill/combinations/drawCombination";
import type { Combination } from "../../src/lock/combination";
import type { Graduations } from "../../src/lock/dial";
import type { Profile } from "../../src/lock/profile";
import { SHIPPED_PROFILES } from "../../src/lock/shippedProfiles";
import { WheelPack } from "../../src/lock/wheelPack";
import { seededChance } from "../../src/statistics/chance";
import { handled } from "../support/handled";

const exact = (from: number, to: number) => fc.integer({ min: from * 64, max: to * 64 }).map((n) => n / 64);
const PROFILES = SHIPPED_PROFILES.map((profile) => [profile.id, profile] as const);
const PACKS = PROFILES.filter(([, { kind }]) => kind === "wheel-pack");

interface Lock {
  readonly combination: Combination;
  readonly start: { readonly dial: Graduations; readonly slack?: readonly Graduations[] };
  /** Parts of the tolerance by which each stop is off, -1 to 1. */
  readonly parts: readonly number[];
}

/** Any combination drawn by the profile's rules, any start, any small errors. */
const locks = (profile: Profile): fc.Arbitrary<Lock> => {
  const plays = profile.kind === "wheel-pack" ? profile.wheelPack.freePlay : [];
  return fc
    .record({
      seed: fc.integer(),
      dial: exact(-250, 250),
      leads: fc.tuple(...plays.map((play) => exact(0, play))),
      parts: fc.array(fc.integer({ min: -64, max: 64 }), { minLength: 6, maxLength: 6 }),
    })
    .map(({ seed, dial, leads, parts }) => ({
      combination: drawCombination(profile, seededChance(seed)),
      start: profile.kind === "wheel-pack" ? { dial, slack: leads } : { dial },
      parts: parts.map((part) => part / 64),
    }))
    .filter(({ combination, start }) => !opensByChance(profile, combination, start));
};

/** Wheels may stand true by chance: then a lock whose first turn is that of the draw opens at once, as it should. */
function opensByChance(profile: Profile, combination: Combination, { dial, slack }: Lock["start"]): boolean {
  if (profile.kind !== "wheel-pack") return false;
  const pack = new WheelPack(profile, combination, { dial, slack: slack ?? [], engagedAt: null });
  const [from = dial, stop = dial] = idealMotion(profile, combination, dial);
  pack.turnBy(stop - from);
  return pack.dial !== stop;
}

const tolerance = (profile: Profile, k: number) =>
  profile.kind === "wheel-pack" ? (profile.wheelPack.gateTolerance[k] ?? 0) : profile.stopTolerance;

describe.each(PROFILES)("an ideal hand at the %s lock", (_, profile) => {
  test("opens it from anywhere, with no fault to tell", () => {
    fc.assert(
      fc.property(locks(profile), ({ combination, start }) => {
        const hand = idealMotion(profile, combination, start.dial);
        const { attempt } = handled(profile, combination, { hand, start });
        expect(attempt.opened).toBe(true);
        expect(attempt.retraction).toBe(1);
        expect(tellFaults(attempt)).toEqual([]);
      }),
    );
  });

  test("opens it with stops that are off by what the lock lets pass", () => {
    fc.assert(
      fc.property(locks(profile), ({ combination, start, parts }) => {
        const errors = combination.map((__, k) => (parts[k] ?? 0) * tolerance(profile, k));
        const hand = idealMotion(profile, combination, start.dial, errors);
        expect(handled(profile, combination, { hand, start }).attempt.opened).toBe(true);
      }),
    );
  });

  test("does not open it with one stop off by more", () => {
    const index = fc.nat({ max: profile.procedure.length - 1 });
    fc.assert(
      fc.property(locks(profile), index, fc.constantFrom(1, -1), ({ combination, start }, wrong, sign) => {
        const errors = combination.map((__, k) => (k === wrong ? sign * (tolerance(profile, k) + 1 / 64) : 0));
        const hand = idealMotion(profile, combination, start.dial, errors);
        expect(handled(profile, combination, { hand, start }).attempt.opened).toBe(false);
      }),
    );
  });

  test("pushes in vain beyond the stop", () => {
    fc.assert(
      fc.property(locks(profile), exact(0, 300), ({ combination, start }, overdraw) => {
        const hand = idealMotion(profile, combination, start.dial);
        const pushed = idealMotion(profile, combination, start.dial, [], overdraw);
        const [there, further] = [hand, pushed].map((path) => handled(profile, combination, { hand: path, start }));
        expect(further?.attempt.dial).toBe(there?.attempt.dial);
        expect(further?.attempt.opened).toBe(true);
      }),
    );
  });
});

test.each(PACKS)("an attempt at the %s lock opens exactly when its pack, turned alone, does", (_, profile) => {
  if (profile.kind !== "wheel-pack") throw new TypeError("not a wheel pack");
  const moves = fc.array(fc.oneof(exact(-420, 420), exact(-30, 30)), { maxLength: 10 });
  fc.assert(
    fc.property(locks(profile), moves, fc.boolean(), ({ combination, start, parts }, extra, isLate) => {
      // Random motion alone never opens; so it comes before or after a motion that nearly does.
      const errors = combination.map((__, k) => (parts[k] ?? 0) * 1.2 * tolerance(profile, k));
      const pack = new WheelPack(profile, combination, { dial: start.dial, slack: start.slack ?? [], engagedAt: null });
      const { attempt } = handled(profile, combination, { hand: [start.dial], start });
      let hasOpened = false;
      const turn = (by: Graduations) => {
        pack.turnBy(by);
        attempt.turnBy(by);
        hasOpened ||= pack.retraction === 1;
      };
      if (!isLate) extra.forEach(turn);
      const path = idealMotion(profile, combination, pack.dial, errors);
      for (const [i, position] of path.slice(1).entries()) turn(position - (path[i] ?? position));
      if (isLate) extra.forEach(turn);
      expect(attempt.opened).toBe(hasOpened);
      expect(attempt.pack?.state).toEqual(pack.state);
      expect(attempt.dial).toBe(pack.dial);
    }),
    { numRuns: 300 },
  );
});
