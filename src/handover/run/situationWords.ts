import type { Region, Situation } from "./rules/situation";

/** A part of the situation, in words: what it is of, and how it is. */
export interface SituationLine {
  readonly region: Region;
  readonly label: string;
  readonly words: string;
}

/** What a bolt that is back means for the door. */
export const NOT_LOCKED = "The bolt is back: the door is not locked.";

type RegionWords = { readonly [R in Region]?: Readonly<Record<Situation[R], string>> };

const LABELS = {
  fit: "Fit",
  fitChecks: "Checks of the fit",
  door: "Door",
  bolt: "Bolt",
  holdback: "Holdback",
  inside: "Inside",
  wayOut: "Inside release",
  mounting: "Height",
  ring: "Ring",
  zero: "Zero",
  combination: "Combination",
  proofs: "Proved, door open",
  second: "Second person",
  outside: "From outside",
  record: "Record",
} as const satisfies Partial<Record<Region, string>>;

const WORDS: RegionWords = {
  // Whether it is a good one, the trainee has to find out.
  fit: { asFound: "", apart: "in parts", faultless: "fitted", faulty: "fitted" },
  fitChecks: { unmade: "not all made", made: "all made" },
  door: { open: "open", shut: "shut" },
  bolt: { thrown: "thrown", spunOff: "thrown, spun off", retracted: "back" },
  holdback: { off: "released", on: "set" },
  inside: { nobody: "nobody", able: "someone who can open", unable: "someone who was shown nothing" },
  wayOut: { unchecked: "not tested", free: "tested, works", blocked: "does not move" },
  mounting: {
    unchecked: "not measured",
    inRange: "in range",
    outOfRange: "out of range",
    authorized: "settled in writing",
  },
  ring: { loose: "loose", aligned: "aligned" },
  zero: {
    notSet: "not set",
    rightSet: "turning right only",
    leftSet: "turning left only",
    bothSet: "both directions",
    byRing: "by the ring",
  },
  // What is really set, the trainee has to find out.
  combination: { shipped: "as shipped", ownTrue: "changed", ownOff: "changed", spoiled: "changed" },
  proofs: { none: "not yet", once: "once", twice: "twice", thrice: "three times" },
  second: { unproved: "not yet", proved: "opened it" },
  outside: { unproved: "not yet", proved: "opened" },
  record: { unwritten: "not written", written: "written" },
};

/** How the door, the lock, people and paper are, line by line, as far as one can see it. */
export function situationLines(situation: Situation): SituationLine[] {
  const shown = (Object.keys(LABELS) as (keyof typeof LABELS)[]).filter(
    (region) => situation.fit !== "asFound" || (region !== "fit" && region !== "fitChecks"),
  );
  return shown.map((region) => {
    const words = WORDS[region] as Readonly<Record<string, string>>;
    return { region, label: LABELS[region], words: words[situation[region]] ?? "" };
  });
}
