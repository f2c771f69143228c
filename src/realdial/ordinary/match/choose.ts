import { AROUND } from "../pose/ring";
import type { Judged } from "./judge";

/** The angle that is the same on the ring (columns) and lies nearest to another. */
export const nearest = (turned: number, to: number): number => turned + AROUND * Math.round((to - turned) / AROUND);

/** The place with the least cost. */
export function bestOf(places: readonly Judged[]): Judged | null {
  return places.reduce<Judged | null>((best, one) => (best === null || one.cost < best.cost ? one : best), null);
}

/** How much more the next place costs, any that lies more than half a graduation (columns) away. */
export function marginOf(best: Judged, places: readonly Judged[], graduation: number): number {
  let least = 1;
  for (const one of places) {
    const off = Math.abs(one.turned - best.turned) % AROUND;
    if (Math.min(off, AROUND - off) > graduation / 2) least = Math.min(least, one.cost);
  }
  return least - best.cost;
}
