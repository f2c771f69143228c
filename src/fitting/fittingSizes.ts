import table from "../../shared/fitting.json" with { type: "json" };

/** Names a size of the training lock's fit; its unit is in the name, graduations or none where there is none. */
export type SizeName = keyof typeof table.sizes;

/** Sizes of the parts of a fit and limits of a good one; what each is for is told in `shared/fitting.json`. */
export type FittingSizes = Readonly<Record<SizeName, number>>;

const entries = Object.entries(table.sizes).map(([name, { value }]) => [name, value] as const);

/** Sizes of the training lock, all training values. */
export const TRAINING_SIZES: FittingSizes = {
  ...(Object.fromEntries(entries) as Record<SizeName, number>),
};
