import type { Combination } from "../../../lock/combination";
import { faceNumber } from "../../../lock/dial";
import type { Profile } from "../../../lock/profile";

/** Between the face's numbers and readings, either way; numbers off the dial stay, so that they can be told. */
const turned = (number: number, profile: Profile | null) =>
  profile === null || !(number >= 0 && number < profile.graduations)
    ? number
    : faceNumber(number, profile.graduations, profile.numbersIncrease);

/** Combinations as one types them, one a line, as the lock's face shows them. */
export function listText(list: readonly Combination[], profile: Profile | null): string {
  return list.map((one) => one.map((number) => turned(number, profile)).join("-")).join("\n");
}

/**
 * Combinations from text, one a line; what is no number becomes NaN, for the check of the sheet to tell.
 *
 * @returns readings in dialing order
 */
export function parseList(text: string, profile: Profile | null): Combination[] {
  return text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "")
    .map((line) => line.split(/[\s,;–-]+/).map((part) => turned(part === "" ? Number.NaN : Number(part), profile)));
}
