import { type Hand, handOf, type Turned } from "./handOf";

/** Every hand of some tries, the one used last first. @param tries - oldest first */
export const handsOf = (tries: readonly Turned[]): Hand[] => [...new Set(tries.map(handOf).reverse())];
