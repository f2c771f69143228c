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

/** How far the opening index stands off (left positive), and the play between dial and cam: graduations. */
export type DialFit = Pick<TrainSpec, "indexOffset" | "lostMotion">;

/** Farthest that an address may put the index off, and the most play that it may give the cam, graduations. */
const MOST = { index: 5, play: 2 } as const;

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

/**
 * How an address asks the index to stand and the cam to follow: "index=0.5&play=1"; undefined where both are true.
 *
 * @param problems - takes what makes no sense, a sentence or two each
 */
export function fitOf(query: URLSearchParams, problems: string[] = []): DialFit | undefined {
  const indexOffset = sizeOf(query, "index", -MOST.index, problems);
  const lostMotion = sizeOf(query, "play", 0, problems);
  return indexOffset === 0 && lostMotion === 0 ? undefined : { indexOffset, lostMotion };
}
