import { CELL_MODEL, SERVICE } from "./serviceValues";

/** Kinds of cells that fit into the case. */
export const CELL_TYPES = ["alkaline", "lithium", "rechargeable"] as const;
/** One of them. */
export type CellType = (typeof CELL_TYPES)[number];

/** One cell of the set. */
export interface Cell {
  readonly type: CellType;
  /** Since it was put in. */
  readonly months: number;
  /** How much of its charge is used, from 0 to 1. */
  readonly used: number;
}

/** A set of equal cells. */
export const setOf = (cell: Cell): readonly Cell[] => Array.from({ length: SERVICE.cells }, () => cell);

/**
 * Voltage of the set while the lock works: cells in a row, each with a resistance inside (Ohm's law; the voltages add up).
 *
 * @returns volts
 */
export function voltsUnderLoad(cells: readonly Cell[]): number {
  return cells.reduce((volts, { type, used }) => {
    const { fresh_V, lost_V, fresh_ohm, grown_ohm } = CELL_MODEL[type];
    return volts + fresh_V - lost_V * used - SERVICE.load_A * (fresh_ohm + grown_ohm * used);
  }, 0);
}
