import type { Chance } from "./chance";

const SEEDS = 100_000;

/** A seed short enough to be read out. */
export function drawSeed(chance: Chance): number {
  return 1 + Math.floor(chance() * (SEEDS - 1));
}
