import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";

/** A source of chance: each call gives a number in [0, 1). The pure layers are handed one; they have none of their own. */
export type Chance = () => number;

/**
 * Chance that repeats itself for the same seed.
 *
 * @param seed - any integer; only its lowest 32 bits count
 */
export function seededChance(seed: number): Chance {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}
