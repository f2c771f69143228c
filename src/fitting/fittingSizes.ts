import table from "../../shared/fitting.json" with { type: "json" };
import type { Profile, SizeName } from "../lock/profile";

/** Sizes of the parts of a fit and limits of a good one; what each is for is told in `shared/fitting.json`. */
export type FittingSizes = Readonly<Record<SizeName, number>>;

const entries = Object.entries(table.sizes).map(([name, { value }]) => [name, value] as const);

/** Sizes of the training lock, all training values. */
export const TRAINING_SIZES: FittingSizes = {
  ...(Object.fromEntries(entries) as Record<SizeName, number>),
};

/** Sizes of a lock's parts: its profile's own, and training values for the rest. */
export const sizesFor = ({ fitting = {} }: Pick<Profile, "fitting">): FittingSizes =>
  Object.fromEntries(entries.map(([name, value]) => [name, fitting[name as SizeName] ?? value])) as FittingSizes;
