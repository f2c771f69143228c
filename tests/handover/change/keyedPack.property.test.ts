import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawCombination } from "../../../src/drill/combinations/drawCombination";
import type { KeyedProfile } from "../../../src/handover/change/changeProfile";
import { KeyedPack } from "../../../src/handover/change/keyedPack";
import type { Combination } from "../../../src/lock/combination";
import { signOf, wrap } from "../../../src/lock/dial";
import { WheelPack } from "../../../src/lock/wheelPack";
import { seeded } from "../../support/seeded";
import { dialTo, KEYED, openBy } from "./changeHands";

/** A change as the handbook has it, with a hand that misses the new numbers by so much. */
function changed(profile: KeyedProfile, [present, wanted]: readonly Combination[], errors: readonly number[] = []) {
  if (present === undefined || wanted === undefined) throw new TypeError("two combinations are needed");
  const keyed = new KeyedPack(profile, present);
  dialTo(keyed, profile, present, profile.changing.index);
  expect([keyed.insertKey(), keyed.turnKey()]).toEqual([null, null]);
  dialTo(keyed, profile, wanted, profile.changing.index, errors);
  expect([keyed.turnKeyBack(), keyed.withdrawKey()]).toEqual([null, null]);
  return { keyed, wanted };
}

const two = (profile: KeyedProfile, seed: number) => {
  const chance = seeded(seed);
  return [drawCombination(profile, chance), drawCombination(profile, chance)];
};

const someErrors = (most: number) =>
  fc.array(fc.double({ min: -most, max: most, noNaN: true }), { minLength: 4, maxLength: 4 });
const aMove = fc.double({ min: -350, max: 350, noNaN: true });

/** The lock's own mechanics, fresh: whether it opens to numbers dialed by a perfect hand. */
function opens(profile: KeyedProfile, setTo: Combination, dialed: Combination): boolean {
  const pack = new WheelPack(profile, setTo);
  openBy(pack, profile, dialed);
  return pack.retraction === 1;
}

const ACTS = [
  (keyed: KeyedPack) => keyed.insertKey(),
  (keyed: KeyedPack) => keyed.turnKey(),
  (keyed: KeyedPack) => keyed.turnKeyBack(),
  (keyed: KeyedPack) => keyed.withdrawKey(),
];

const rounded = (answer: unknown) =>
  typeof answer === "number" ? answer.toFixed(4).replace("-0.0000", "0.0000") : answer;

/** Does something to a lock by its number: an act of the key, or a turn of the dial. */
const act = (keyed: KeyedPack, what: number) => ACTS[what]?.(keyed) ?? keyed.turnBy((what - 50) * 7.3);

const off = (profile: KeyedProfile, numbers: Combination, by: readonly number[]) =>
  numbers.map((number, k) => (number + (by[k] ?? 0) + profile.graduations) % profile.graduations);

describe.each(KEYED)("$id", (profile) => {
  test("a number dialed so far off is set exactly so far off, and opens there and not beyond its gate", () => {
    fc.assert(
      fc.property(fc.nat(), someErrors(2), someErrors(2), (seed, errors, misses) => {
        const { keyed, wanted } = changed(profile, two(profile, seed), errors);
        const signed = profile.procedure.map(({ turn }, k) => signOf(turn) * (errors[k] ?? 0));
        const real = off(profile, wanted, signed);
        const set = keyed.setCombination ?? [];
        set.forEach((number, k) => {
          expect(Math.abs(wrap(number - (real[k] ?? 0), profile.graduations))).toBeLessThan(1e-9);
        });
        openBy(keyed, profile, real);
        expect(keyed.pack.retraction).toBe(1);
        // The judge knows nothing of keys: a plain pack set to the numbers meant, plus the errors.
        const missed = off(profile, real, misses);
        const isWithin = profile.wheelPack.gateTolerance.every((most, k) => Math.abs(misses[k] ?? 0) <= most);
        const isClear = profile.wheelPack.gateTolerance.every(
          (most, k) => Math.abs(most - Math.abs(misses[k] ?? 0)) > 1e-6,
        );
        fc.pre(isClear);
        expect(opens(profile, set, missed)).toBe(isWithin);
      }),
      { numRuns: 150 },
    );
  });

  test("the opening index taken for the changing index puts every number off by what lies between them", () => {
    const [present, wanted] = two(profile, 5);
    if (present === undefined || wanted === undefined) throw new TypeError("two combinations are needed");
    const keyed = new KeyedPack(profile, present);
    dialTo(keyed, profile, present, profile.changing.index);
    keyed.insertKey();
    keyed.turnKey();
    dialTo(keyed, profile, wanted, 0);
    keyed.turnKeyBack();
    const errors = (keyed.setCombination ?? []).map((number, k) =>
      wrap(number - (wanted[k] ?? 0), profile.graduations),
    );
    expect(errors).toEqual(wanted.map(() => -profile.changing.index));
  });

  test("a key turned with a wheel beyond its tolerance tears that wheel loose, and no motion opens the pack", () => {
    const { keyTolerance } = profile.changing;
    fc.assert(
      fc.property(someErrors(2 * keyTolerance), fc.array(aMove, { maxLength: 12 }), (errors, moves) => {
        const present = drawCombination(profile, seeded(3));
        const keyed = new KeyedPack(profile, present);
        dialTo(keyed, profile, present, profile.changing.index, errors);
        keyed.insertKey();
        const astray = errors.slice(0, present.length).flatMap((e, k) => (Math.abs(e) > keyTolerance ? [k] : []));
        fc.pre(errors.every((e) => Math.abs(Math.abs(e) - keyTolerance) > 1e-6));
        keyed.turnKey();
        expect(keyed.loose).toEqual(astray);
        expect(keyed.isSpoiled).toBe(astray.length > 0);
        fc.pre(astray.length > 0);
        keyed.turnKeyBack();
        keyed.withdrawKey();
        expect(keyed.setCombination).toBeNull();
        for (const by of moves) keyed.turnBy(by);
        openBy(keyed, profile, present);
        expect(keyed.pack.retraction).toBe(0);
      }),
    );
  });

  test("a key that is in holds the wheels, whatever the dial does; out again, nothing has changed", () => {
    fc.assert(
      fc.property(
        fc.array(aMove, { maxLength: 8 }),
        fc.array(aMove, { minLength: 1, maxLength: 12 }),
        (before, moves) => {
          const present = drawCombination(profile, seeded(8));
          const keyed = new KeyedPack(profile, present);
          for (const by of before) keyed.turnBy(by);
          fc.pre(keyed.pack.engagedAt === null);
          const stands = keyed.pack.stands();
          keyed.insertKey();
          for (const by of moves) keyed.turnBy(by);
          keyed.pack.stands().forEach((stand, k) => {
            expect(Math.abs(wrap(stand - (stands[k] ?? 0), profile.graduations))).toBeLessThan(1e-9);
          });
          keyed.withdrawKey();
          expect(keyed.setCombination).toEqual(present);
        },
      ),
    );
  });

  test("a picture brings back all that matters: the same acts do the same from there", () => {
    const script = fc.array(fc.integer({ min: 0, max: 100 }), { maxLength: 20 });
    fc.assert(
      fc.property(script, script, (before, after) => {
        const present = drawCombination(profile, seeded(2));
        const one = new KeyedPack(profile, present);
        dialTo(one, profile, present, profile.changing.index);
        for (const what of before) act(one, what);
        const other = new KeyedPack(profile, present);
        other.restore(one.state);
        for (const what of after) {
          expect(rounded(act(other, what))).toEqual(rounded(act(one, what)));
        }
        expect([other.key, other.loose, other.isSpoiled]).toEqual([one.key, one.loose, one.isSpoiled]);
        expect(other.dial).toBeCloseTo(one.dial, 6);
      }),
    );
  });
});
