import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";

/** A source of chance: each call gives a number in [0, 1). The pure layers are handed one; they have none of their own. */
export type Chance = () => number;

/**
 * Chance that repeats itself for the same seed.
 *
 * The Mersenne twister scrambles its seed: generators that do not give nearly equal first numbers for seeds 1, 2, 3.
 *
 * @param seed - any integer; only its lowest 32 bits count
 */
export function seededChance(seed: number): Chance {
  const generator = mersenne(seed);
  return () => uniformFloat64(generator);
}
