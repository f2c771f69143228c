/** A seed that nobody chose, an integer in [0, 2^32). Every page has random bytes, whatever its address. */
export const newSeed = (): number => crypto.getRandomValues(new Uint32Array(1))[0] ?? 1;
