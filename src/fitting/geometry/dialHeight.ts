import table from "../../../shared/reach.json" with { type: "json" };

/** Where the middle of a dial is, seen from a hand that must reach it. */
export type DialHeight = "too-low" | "in-reach" | "too-high";

/** The published limits of that, with their source. */
export const REACH = table.doorHardware;
/** The published limits of a reach with nothing in the way, which are wider, with their source. */
export const OPEN_REACH = table.open;

/**
 * Whether a dial is at a height where the ADA Standards want the operable parts of door hardware; both limits are in.
 *
 * Source: 2010 ADA Standards, 404.2.7; the figures and their citation are in `shared/reach.json`.
 *
 * @param height_mm - of its middle above the finish floor
 */
export function dialHeight(height_mm: number): DialHeight {
  if (height_mm < REACH.least_mm) return "too-low";
  return height_mm > REACH.most_mm ? "too-high" : "in-reach";
}
