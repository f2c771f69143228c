import { AROUND } from "../pose/ring";
import { nearest } from "./choose";
import type { Prediction } from "./prediction";

/** A reach that says little, columns: then a place must be clear of all, and be confirmed. */
const WIDE = 0.4 * AROUND;
/** No two numerals lie within so many columns. */
const NARROW = AROUND / 7;

/** Whether a place (columns, of any turn) is one to which the dial can have come. */
export const isWithin = (turned: number, to: Prediction | null): boolean =>
  to === null ||
  Math.abs(nearest(turned, (to.least + to.most) / 2) - (to.least + to.most) / 2) <= (to.most - to.least) / 2 + 1;

/** Whether the dial can have come nearly anywhere. */
export const isWide = (to: Prediction | null): boolean => to === null || to.most - to.least > WIDE;

/** Whether hardly two numerals lie within reach. */
export const isNarrow = (to: Prediction | null): boolean => to !== null && to.most - to.least < NARROW;

/** How far from where the dial would go on to a place lies, columns; NaN where that is not known. */
export const offCourse = (turned: number, to: Prediction | null): number =>
  to === null ? Number.NaN : Math.abs(nearest(turned, to.turned) - to.turned);

/** Whether the dial can have come to a place (columns) by a turn more or less. */
export const canBeAnotherTurn = (turned: number, to: Prediction | null): boolean =>
  to !== null && (turned - AROUND >= to.least || turned + AROUND <= to.most);
