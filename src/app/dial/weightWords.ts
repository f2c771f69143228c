import type { DialWeight } from "../../dialing/dialFeel";

const WORDS: Readonly<Record<DialWeight, string>> = {
  usual: "",
  heavy: "The dial is heavy: it sticks, then follows behind your hand; the arc at the knob shows the strain.",
  light: "The dial is light: it runs on after your hand stops.",
};

/** What is told of a dial that does not turn as usual; empty for one that does. */
export const weightWords = (weight: DialWeight): string => WORDS[weight];
