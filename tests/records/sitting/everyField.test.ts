import { expect, test } from "vitest";
import { FITTED, FOUND, JUDGED, SERVED, verdictOn } from "../../support/drawnTries";

const SOUND = [FITTED, JUDGED, SERVED, FOUND] as const;

/** What a forger may write in place of a value; what is no such value is not read. */
function otherwise(value: unknown): readonly unknown[] {
  if (typeof value === "number") return [value + 1, value - 1, 0, value * 2, -value, value + 0.5];
  if (typeof value === "boolean") return [!value];
  if (Array.isArray(value))
    return [[], value.slice(1), value.toReversed(), [...value, ...value], ["rubs"], ["key-loose"], ["zero"], ["rim"]];
  return ["rubs", "wheel-off", "coupled", "closed", "apart", "dialing", 0, null, undefined];
}

/** Fields of a try that can be changed by themselves, marks and hash made anew, without the check naming it. */
const unnamed = (place: number): string[] => {
  const sound = SOUND[place] ?? FITTED;
  return Object.entries(sound).flatMap(([field, value]) => {
    const others = otherwise(value).filter((other) => JSON.stringify(other) !== JSON.stringify(value));
    const isNamed = others.every((other) => {
      const forged = JSON.parse(JSON.stringify({ ...sound, [field]: other }));
      return verdictOn(SOUND.map((one, k) => (k === place ? forged : one))).length > 0;
    });
    return isNamed ? [] : [field];
  });
};

/**
 * What a try says of its hand alone, and nothing else on record tells: how long it took, what was done and left out, what
 * was named; of what was found in a visit, the order. Whoever changes it has made up a try that can have been: only the hash
 * of the result speaks against it, and the marks that follow from it.
 */
const OF_THE_HAND: readonly (readonly [string, number, readonly string[]])[] = [
  ["fitting", 0, ["time_ms", "declared", "skipped", "moves", "spindlesUsed"]],
  ["inspection", 1, ["time_ms", "named", "skipped"]],
  ["service", 2, ["time_ms", "isLeft", "found", "acts"]],
  ["trouble", 3, ["time_ms", "sizeError", "tries", "measurements"]],
];

test.each(OF_THE_HAND)("each field of a try is held to the rest, or is of the hand alone: %s", (_, place, fields) => {
  expect(unnamed(place)).toEqual(fields);
});
