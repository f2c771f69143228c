/** The face of the first lock, which the first lesson and a bench that is asked for nothing have: without what reads a whole profile. */
export const FIRST_FACE = { graduations: 100, numbersIncrease: "left" } as const;
