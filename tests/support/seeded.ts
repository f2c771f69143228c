import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";

/**
 * A generator of numbers in [0, 1) that gives the same row for the same seed.
 *
 * The Mersenne twister, because it mixes its seed well: others give neighboring seeds nearly the same first numbers.
 *
 * @param seed - integer
 */
export function seeded(seed: number): () => number {
  const generator = mersenne(seed);
  return () => uniformFloat64(generator);
}
