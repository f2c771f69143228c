import fc from "fast-check";
import { type Graduations, opposite, reading } from "../../src/lock/dial";
import type { WheelPackProfile } from "../../src/lock/profile";
import { WheelPack } from "../../src/lock/wheelPack";
import type { WheelPackState } from "../../src/lock/wheelPackState";
import { type PackParts, packProfile } from "./testPacks";

// Multiples of 1/64 are exact in binary, and so are their sums: no tolerance is needed where they are used.
const multiplesOf = (unit: number) => (from: number, to: number) =>
  fc.integer({ min: Math.round(from / unit), max: Math.round(to / unit) }).map((n) => n * unit);
export const exact = multiplesOf(1 / 64);
export const rounded = multiplesOf(1 / 1000);

export interface Setup {
  readonly parts: Required<PackParts>;
  readonly profile: WheelPackProfile;
  readonly combination: readonly Graduations[];
  readonly start: WheelPackState;
}

const dials = fc.record({ wheels: fc.integer({ min: 2, max: 6 }), perTurn: fc.integer({ min: 10, max: 200 }) });

/**
 * Any lock that a profile allows, anywhere at rest.
 *
 * @param nose - whether its gates are so wide that the nose drops at every engagement point, so narrow that it never
 *   does, or either
 * @param within - where its plays come from
 */
export const setups = (nose: "drops" | "rides" | "either", within = exact) =>
  dials.chain(({ wheels, perTurn }) => {
    const perWheel = <T>(one: fc.Arbitrary<T>) => fc.array(one, { minLength: wheels, maxLength: wheels });
    const play = fc.oneof(within(0, perTurn), fc.constantFrom(0, perTurn));
    return fc
      .record({
        freePlay: perWheel(play),
        firstTurn: fc.constantFrom("left" as const, "right" as const),
        engageAt: exact(0, perTurn - 1),
        travel: exact(1, perTurn),
        hasWideGates: nose === "either" ? fc.boolean() : fc.constant(nose === "drops"),
        numbers: perWheel(exact(0, perTurn - 1)),
        fractions: perWheel(fc.constantFrom(0, 0.25, 0.5, 1)),
        dial: exact(-300, 300),
      })
      .map(({ hasWideGates, numbers, fractions, dial, ...rest }): Setup => {
        const parts = { ...rest, perTurn, gateTolerance: hasWideGates ? perTurn / 2 : 0 };
        // Half a 64th off every place a wheel can come to rest.
        const combination = hasWideGates ? numbers : numbers.map((number) => number + 1 / 128);
        const slack = rest.freePlay.map((one, k) => Math.floor(one * (fractions[k] ?? 0) * 64) / 64);
        return { parts, profile: packProfile(parts), combination, start: { dial, slack, engagedAt: null } };
      });
  });

const move = fc.oneof(exact(-900, 900), exact(-10, 10));
export const moves = fc.array(move, { maxLength: 12 });
export const packOf = ({ profile, combination, start }: Setup, first: readonly Graduations[] = []) => {
  const pack = new WheelPack(profile, combination, start);
  for (const by of first) pack.turnBy(by);
  return pack;
};
export const sum = (list: readonly number[]) => list.reduce((total, one) => total + one, 0);
export const positionsOf = ({ dial, slack }: WheelPackState) => slack.map((_, k) => dial + sum(slack.slice(k)));

/** The same lock seen in a mirror: a wheel that led by s now leads by what s leaves of its play. */
export function mirrored({ parts, profile, combination, start }: Setup): Setup {
  const { freePlay, perTurn, firstTurn, engageAt } = parts;
  const turned = { ...parts, firstTurn: opposite(firstTurn), engageAt: reading(-engageAt, perTurn) };
  return {
    parts: turned,
    profile: {
      ...packProfile(turned),
      draw: { ...profile.draw, turn: opposite(profile.draw.turn), engageAt: turned.engageAt },
    },
    combination: combination.map((number) => reading(-number, perTurn)),
    start: { dial: -start.dial, slack: start.slack.map((slack, k) => (freePlay[k] ?? 0) - slack), engagedAt: null },
  };
}
