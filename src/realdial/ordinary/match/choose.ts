import { AROUND } from "../pose/ring";
import type { Judged } from "./judge";

/** The angle that is the same on the ring (columns) and lies nearest to another. */
export const nearest = (turned: number, to: number): number => turned + AROUND * Math.round((to - turned) / AROUND);

/** The place with the least cost. */
export function bestOf(places: readonly Judged[]): Judged | null {
  return places.reduce<Judged | null>((best, one) => (best === null || one.cost < best.cost ? one : best), null);
}

/** So clear is a place that has no other beside it. */
const ALONE = 99;

/**
 * How clearly a place is better than each other that lies more than half a graduation (columns) away: the pieces of the
 * ring vote, each by how much more the other leaves unexplained there. The sum of the votes is measured by what they would
 * come to if each had its sign by chance (their root sum of squares), so it is about normal where nothing tells two places
 * apart, whatever part of the ring is covered.
 */
export function clearnessOf(best: Judged, places: readonly Judged[], graduation: number): number {
  let least = ALONE;
  for (const one of places) {
    const off = Math.abs(nearest(one.turned, best.turned) - best.turned);
    if (off > graduation / 2) least = Math.min(least, betterBy(best, one));
  }
  return least;
}

/** How clearly one place is better than another: see `clearnessOf`. */
export function betterBy(one: Judged, other: Judged): number {
  let [sum, squares] = [0, 0];
  for (let piece = 0; piece < one.printed.length; piece++) {
    const printed = (one.printed[piece] as number) + (other.printed[piece] as number);
    const more = printed * ((other.unexplained[piece] as number) - (one.unexplained[piece] as number));
    sum += more;
    squares += more * more;
  }
  return squares === 0 ? 0 : sum / Math.sqrt(squares);
}
