import type { Section } from "./papers";
import type { Instrument, LookPlace, Question, VisitChange } from "./visitAct";
import type { Condition } from "./wrongThing";

/** What the holder is asked. */
export const QUESTION_WORDS: Readonly<Record<Question, string>> = {
  trouble: "Has anything changed when you open it?",
  "work-nearby": "Has anyone worked on the door or near it?",
};

/** Where one looks, as one is told to. */
export const LOOK_WORDS: Readonly<Record<LookPlace, string>> = {
  ring: "Look at dial and ring",
  bolt: "Work the bolt by its handle",
  "way-out": "Try the handle inside",
  case: "Look at the battery case",
};

/** What is measured, as one is told to. */
export const INSTRUMENT_WORDS: Readonly<Record<Instrument, string>> = {
  "turn-round": "Turn the dial all round",
  "lost-motion": "Measure the lost motion",
  marks: "Read at four marks of the ring",
  key: "Try the key's screw",
  battery: "Measure the batteries under load",
};

/** What was done, after "you" or by itself. */
export const CHANGE_WORDS: Readonly<Record<VisitChange["type"] | "cover.taken", string>> = {
  "cover.taken": "you took the cover off",
  "screw.tightened": "you tightened the key's screw",
  "key.replaced": "you replaced the key",
  "bearing.replaced": "you replaced the spindle's bearing",
  "ring.cleaned": "you wiped the ring",
  "paint.removed": "you removed paint",
  "bolt.wiped": "you wiped the bolt",
  "ring.centered": "you centered the ring",
  lubricated: "you lubricated a part",
  "batteries.replaced": "you replaced batteries",
};

/** What use does to a lock, in few words. */
export const CONDITION_LABELS: Readonly<Record<Condition, string>> = {
  "key-loose": "Key's screw loose",
  "key-worn": "Key worn: lost motion over the limit",
  "ring-dirty": "Ring dirty",
  "bearing-dry": "Spindle's bearing dry",
  "ring-painted": "Paint between dial and ring",
  "ring-off-center": "Ring off center",
  "bolt-drags": "Bolt drags",
  "batteries-low": "Batteries low under load",
  "batteries-old": "Batteries over their age",
};

/** Titles of the sections of written instructions. */
export const SECTION_TITLES: Readonly<Record<Section, string>> = {
  safety: "Before you begin",
  lubrication: "Cleaning and lubrication",
  limits: "Limits and torque",
  batteries: "Batteries",
  proof: "Proof and record",
};
