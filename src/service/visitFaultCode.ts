import { SECTIONS } from "./papers";
import { CHANGE_TYPES, INSTRUMENTS, LOOK_PLACES, QUESTIONS } from "./visitAct";
import { CONDITIONS, WRONG_THINGS } from "./wrongThing";

/** Faults that say all by their code. */
export const PLAIN_FAULTS = [
  "last-record-not-read",
  "door-not-held",
  "not-tried-before",
  "cover-without-strap",
  "torque-not-as-written",
  "lubricated-forbidden",
  "lubricant-not-as-written",
  "not-proved",
  "shut-before-proof",
  "cover-left-off",
  "door-left-open",
  "no-record",
  "record-without-figures",
  "record-without-changes",
  "record-without-proofs",
  "record-not-true",
  "combination-in-record",
] as const;

/** Faults that say what they are about, and all that it can be. */
export const FAULTS_ABOUT = {
  "not-asked": QUESTIONS,
  "section-not-read": SECTIONS,
  "acted-without-instructions": ["cover.taken", ...CHANGE_TYPES],
  "look-left-out": LOOK_PLACES,
  "not-measured": INSTRUMENTS,
  "changed-sound": CHANGE_TYPES,
  "left-wrong": WRONG_THINGS,
  "made-wrong": WRONG_THINGS,
  "missed-in-record": CONDITIONS,
  "invented-in-record": CONDITIONS,
} as const;

type Abouts = typeof FAULTS_ABOUT;

/** Code of a fault that says all. */
export type PlainFault = (typeof PLAIN_FAULTS)[number];

/** Something that a visit did wrong or left out. */
export type VisitFault =
  | { readonly code: PlainFault; readonly about: null }
  | { [Code in keyof Abouts]: { readonly code: Code; readonly about: Abouts[Code][number] } }[keyof Abouts];
