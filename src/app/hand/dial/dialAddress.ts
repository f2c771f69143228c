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

/** Farthest that an address may put the index off, and the most play that it may give the cam, graduations. */
const MOST = { index: 50, play: 6 } as const;
/** Most that a dial off its axis may read wrong; most that a key that rides on the lever may hold it, and how far round; graduations. */
const MOST_ROUND = 3;
const MOST_CAUGHT = { drag: 5, arc: 50 } as const;

/** A size that the address asks for: "index=0.5". What makes no sense is 0, and the page says so. */
function sizeOf(query: URLSearchParams, part: keyof typeof MOST, least: number, problems: string[]): number {
  const asked = query.get(part);
  const size = Number(asked ?? 0);
  if (size >= least && size <= MOST[part] && asked?.trim() !== "") return size;
  problems.push(
    `The address asks for ${part} "${asked}", which is no size from ${least} to ${MOST[part]} graduations. The bench uses 0.`,
  );
  return 0;
}

/** Several sizes that the address asks for in a row, each 0 or more and within its limit: "round=0.3,40". */
function sizesOf(query: URLSearchParams, part: string, most: readonly number[], problems: string[]): number[] | null {
  const asked = query.get(part);
  if (asked === null) return null;
  const sizes = asked.split(",").map((one) => (one.trim() === "" ? Number.NaN : Number(one)));
  if (sizes.length === most.length && sizes.every((size, k) => size >= 0 && size <= (most[k] ?? 0))) return sizes;
  problems.push(
    `The address asks for ${part} "${asked}", which is not ${most.length} sizes from 0 to ${most.join(" and ")} graduations. The bench leaves it out.`,
  );
  return null;
}

/**
 * How an address asks the dial to be fitted: "index=0.5&play=1", and "round=0.3,40" for a dial off its axis (how much, from
 * where), "catch=2,50,10" for a key that rides on the lever (how much, where, how far round); undefined where all is true.
 *
 * @param problems - takes what makes no sense, a sentence or two each
 */
export function fitOf(query: URLSearchParams, problems: string[] = []): DialFit | undefined {
  const indexOffset = sizeOf(query, "index", -MOST.index, problems);
  const lostMotion = sizeOf(query, "play", 0, problems);
  const [size = 0, from = 0] = sizesOf(query, "round", [MOST_ROUND, 1000], problems) ?? [];
  const [drag = 0, at = 0, arc = 0] =
    sizesOf(query, "catch", [MOST_CAUGHT.drag, 1000, MOST_CAUGHT.arc], problems) ?? [];
  if ([indexOffset, lostMotion, size, drag].every((one) => one === 0)) return undefined;
  return {
    indexOffset,
    lostMotion,
    ...(size > 0 && { runout: { size, at: from } }),
    ...(drag > 0 && { catching: { drag, at, arc } }),
  };
}

/** The part of an address that asks for a dial fitted so; empty where all is true. */
export function fitQuery({ indexOffset, lostMotion, runout, catching }: DialFit): string {
  return [
    `&index=${indexOffset}&play=${lostMotion}`,
    runout === undefined ? "" : `&round=${runout.size},${runout.at}`,
    catching === undefined ? "" : `&catch=${catching.drag},${catching.at},${catching.arc}`,
  ].join("");
}
