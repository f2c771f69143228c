import { DIAL_WEIGHTS, type DialWeight } from "../../../dialing/hand/dialFeel";
import type { TrainSpec } from "../../../lock/train/lockTrain";

/** The weight of the dial that an address asks for: "dial=heavy". As it should be where it asks for none. */
export const weightOf = (query: URLSearchParams): DialWeight =>
  DIAL_WEIGHTS.find((weight) => weight === query.get("dial")) ?? "usual";

/** The same address with another weight of the dial. */
export function withWeight(hash: string, weight: DialWeight): string {
  const [page = "", asked = ""] = hash.split("?");
  const query = new URLSearchParams(asked);
  if (weight === "usual") query.delete("dial");
  else query.set("dial", weight);
  return query.size === 0 ? page : `${page}?${query}`;
}

/** The joints of a lock whose dial is not well fitted. */
export type DialFit = Omit<TrainSpec, "start" | "drag">;

/** The sizes that an address may ask for, the least and the most of each, graduations. */
const PARTS = {
  /** How far the index stands off, left positive. */
  index: { least: -50, most: [50] },
  /** Play between dial and cam. */
  play: { least: 0, most: [6] },
  /** How far the cam stands off the dial that it is keyed to. */
  keyed: { least: 0, most: [1000] },
  /** What a dial off its axis reads wrong at most, and where it begins to read too much. */
  round: { least: 0, most: [3, 1000] },
  /** How much farther the hand gets ahead where a key rides on the lever, where that is, and how far round. */
  catch: { least: 0, most: [5, 1000, 50] },
} as const;

/** Sizes that the address asks for: "index=0.5", "round=0.3,40". Of what makes no sense none is taken, and the page says so. */
function sizesOf(query: URLSearchParams, part: keyof typeof PARTS, problems: string[]): readonly number[] {
  const { least, most } = PARTS[part];
  const asked = query.get(part);
  if (asked === null) return [];
  const sizes = asked.split(",").map((one) => (one.trim() === "" ? Number.NaN : Number(one)));
  if (sizes.length === most.length && sizes.every((size, k) => size >= least && size <= (most[k] ?? 0))) return sizes;
  const wanted =
    most.length > 1
      ? `${most.length} sizes from ${least} to ${most.join(" and ")}`
      : `a size from ${least} to ${most[0]}`;
  problems.push(`The address asks for ${part} "${asked}", which is not ${wanted} graduations. This page uses 0.`);
  return [];
}

/**
 * How an address asks the dial to be fitted: "index=0.5&play=1", and "keyed=25" for a key in another keyway, "round=0.3,40" for a dial off its axis, "catch=2,50,10"
 * for a key that rides on the lever; undefined where all is true.
 *
 * @param problems - takes what makes no sense, a sentence or two each
 */
export function fitOf(query: URLSearchParams, problems: string[] = []): DialFit | undefined {
  const [indexOffset = 0] = sizesOf(query, "index", problems);
  const [lostMotion = 0] = sizesOf(query, "play", problems);
  const [keyedOff = 0] = sizesOf(query, "keyed", problems);
  const [size = 0, from = 0] = sizesOf(query, "round", problems);
  const [drag = 0, at = 0, arc = 0] = sizesOf(query, "catch", problems);
  if ([indexOffset, lostMotion, keyedOff, size, drag].every((one) => one === 0)) return undefined;
  return {
    indexOffset,
    lostMotion,
    ...(keyedOff > 0 && { keyedOff }),
    ...(size > 0 && { runout: { size, at: from } }),
    ...(drag > 0 && { catching: { drag, at, arc } }),
  };
}

/** The part of an address that asks for a dial fitted so; empty where all is true. */
export function fitQuery({ indexOffset, lostMotion, keyedOff = 0, runout, catching }: DialFit): string {
  const isTrue =
    indexOffset === 0 && lostMotion === 0 && keyedOff === 0 && runout === undefined && catching === undefined;
  return [
    isTrue ? "" : `&index=${indexOffset}&play=${lostMotion}`,
    keyedOff === 0 ? "" : `&keyed=${keyedOff}`,
    runout === undefined ? "" : `&round=${runout.size},${runout.at}`,
    catching === undefined ? "" : `&catch=${catching.drag},${catching.at},${catching.arc}`,
  ].join("");
}
