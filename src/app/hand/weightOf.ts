import { DIAL_WEIGHTS, type DialWeight } from "../../dialing/hand/dialFeel";

/** The weight of the dial that an address asks for: "dial=heavy". As it should be where it asks for none. */
export const weightOf = (query: URLSearchParams): DialWeight =>
  DIAL_WEIGHTS.find((weight) => weight === query.get("dial")) ?? "usual";
