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

/** Cells in a set. */
const CELLS = 4;
/** What the lock draws while it works, amperes; a training value. */
const LOAD_A = 0.5;

/** Volts without load when new, what is lost of them by the end, and ohms inside when new and by the end; training values. */
const MODEL: Readonly<
  Record<CellType, readonly [fresh_V: number, lost_V: number, fresh_ohm: number, grown_ohm: number]>
> = {
  alkaline: [1.58, 0.45, 0.2, 0.8],
  lithium: [1.75, 0.25, 0.1, 0.4],
  rechargeable: [1.32, 0.2, 0.05, 0.2],
};

/** A set of equal cells. */
export const setOf = (cell: Cell): readonly Cell[] => Array.from({ length: CELLS }, () => cell);

/**
 * Voltage of the set while the lock works: cells in a row, each with a resistance inside (Ohm's law; the voltages add up).
 *
 * @returns volts
 */
export function voltsUnderLoad(cells: readonly Cell[]): number {
  return cells.reduce((volts, { type, used }) => {
    const [fresh_V, lost_V, fresh_ohm, grown_ohm] = MODEL[type];
    return volts + fresh_V - lost_V * used - LOAD_A * (fresh_ohm + grown_ohm * used);
  }, 0);
}
