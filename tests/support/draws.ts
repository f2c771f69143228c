/** Set where `npm run trials` runs again what has draws, with all of them (tests/trials/runAll.ts). */
export const ALL_DRAWS = "GATEFALL_ALL_DRAWS";

/**
 * How many draws a test makes. In `npm test` it makes a part, by the same lines.
 *
 * @param quick - in `npm test`
 * @param all - in `npm run trials`
 */
export const draws = (quick: number, all: number): number => (process.env[ALL_DRAWS] === undefined ? quick : all);
