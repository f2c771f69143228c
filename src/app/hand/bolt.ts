import type { DialingState } from "../../dialing/dialingMachine";

/** Where a bolt stands that has just moved; null for one that has done nothing yet. */
export type Bolt = "back" | "thrown" | null;

const BOLT: Partial<Record<DialingState, Bolt>> = { open: "back", thrown: "thrown", secured: "thrown" };

/** The bolt of a lock that is dialed. */
export const boltOf = (state: DialingState): Bolt => BOLT[state] ?? null;
