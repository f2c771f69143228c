import { canonicalJson } from "../canonicalJson";
import { sha256Hex } from "../sha256";
import type { CombinationPolicy, Sheet, Station } from "./sheet";

/** Drawn anew for every try is what a policy means that does not say how often. */
function policyThatCounts(combinations: CombinationPolicy): CombinationPolicy {
  if (combinations.policy !== "drawn" || combinations.each === "station") return combinations;
  return { ...combinations, each: undefined };
}

/** A station without its name and its wording. */
function stationThatCounts(station: Station) {
  const { id: _id, title: _title, task: _task, conditions = [], ...rest } = station;
  return {
    ...rest,
    ...("turnedBy" in rest && rest.turnedBy === "any" && { turnedBy: undefined }),
    ...("lostSight" in rest && rest.lostSight === "counts" && { lostSight: undefined }),
    ...("combinations" in rest && { combinations: policyThatCounts(rest.combinations) }),
    ...(conditions.length > 0 && { conditions }),
  };
}

/**
 * SHA-256 of what counts in a sheet, 64 hexadecimal digits.
 *
 * What counts is all that makes a sitting easier or harder: stations with their locks, combinations, help, repetitions,
 * time limits, conditions and pass marks, their order, the seed, and the rules and questions of the sitting. Wording
 * does not count (titles, purpose, tasks, instructions, cautions, source, names of stations), so a sheet that was
 * translated or retitled has the same.
 *
 * A lock of this trainer counts by its id, one that a sheet brings along by all of its fields.
 */
export const sheetSha256 = ({ version, stations, order, seed, sitting }: Sheet): string =>
  sha256Hex(canonicalJson({ version, stations: stations.map(stationThatCounts), order, seed, sitting }));

/** The short form that people compare: "7F3A-91C2". @param hash - of a sheet, as `sheetSha256` gives it */
export const shortFingerprint = (hash: string): string => `${hash.slice(0, 4)}-${hash.slice(4, 8)}`.toUpperCase();

/**
 * The fingerprint of a sheet in its short form, for screens and prints.
 *
 * Programs compare the whole of `sheetSha256`: two sheets with one short form can be made on purpose.
 */
export const sheetFingerprint = (sheet: Sheet): string => shortFingerprint(sheetSha256(sheet));
