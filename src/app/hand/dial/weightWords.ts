import type { DialWeight } from "../../../dialing/hand/dialFeel";

/** What is told of a dial that does not turn as usual; empty for one that does. */
export const WEIGHT_WORDS: Readonly<Record<DialWeight, string>> = {
  usual: "",
  heavy: "The dial is heavy: it sticks, then follows behind your hand. The arc at the knob shows how hard you pull.",
  light: "The dial is light: it keeps turning a little after your hand stops.",
};
