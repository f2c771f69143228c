/** A caution, and where it comes from. */
export interface Caution {
  readonly id:
    | "instructions"
    | "licensed"
    | "egress"
    | "height"
    | "operation"
    | "security-height"
    | "door"
    | "inside"
    | "holdback"
    | "record"
    | "held"
    | "chips";
  readonly text: string;
  readonly source: string;
}

const COMMON = "common practice, no source";

/** Cautions of a handover, each shown where it applies. */
export const CAUTIONS: readonly Caution[] = [
  {
    id: "instructions",
    text: "The maker's written instructions for the lock in front of you are the final authority.",
    source: COMMON,
  },
  {
    id: "licensed",
    text: "Local codes, the authority having jurisdiction and your license decide what you may fit.",
    source: COMMON,
  },
  {
    id: "egress",
    text: "A door that people must get out by opens from their side without a key, special knowledge or effort, in one motion.",
    source: "IBC 1010.2 and, for one motion, 1010.2.1 (2021), as an example; your local code decides",
  },
  {
    id: "height",
    text: "Where the accessibility standard applies, operable parts are 34 to 48 inches above the floor. Nobody on site can waive that law. Above 48 inches, stop: have the lock moved, or have the exception confirmed in writing by whoever has authority.",
    source: "2010 ADA Standards 404.2.7 and 309.4",
  },
  {
    id: "operation",
    text: "The same standard asks for parts that work with one hand, without tight grasping, pinching or twisting of the wrist, and with 5 pounds of force at most. A dial must be gripped and twisted: ask whether this door must comply.",
    source: "2010 ADA Standards 309.4",
  },
  {
    id: "security-height",
    text: "The building code lets locks used only for security purposes be at any height. That is another rule: it does not replace the accessibility standard.",
    source: "IBC 1010.2.3 (2021), as an example; your local code decides",
  },
  {
    id: "door",
    text: "Prove a new combination at least three times before you shut the door.",
    source: "MIL-HDBK-1013/8 (1989), section 2, item d",
  },
  {
    id: "inside",
    text: "Where people can enter, keep someone inside who can open, after you have tested the inside release.",
    source: COMMON,
  },
  { id: "holdback", text: "A door whose bolt is held back does not lock.", source: COMMON },
  {
    id: "record",
    text: "Never write the combination in a record. A practice result is not a certificate.",
    source: COMMON,
  },
  { id: "held", text: "Work on a lock in parts with the door open and held.", source: COMMON },
  {
    id: "chips",
    text: "Sawing and filing throw sharp chips: wear eye protection, and do not drill or grind near people.",
    source: COMMON,
  },
];

/** A caution by its name. */
export function caution(id: Caution["id"]): Caution {
  return CAUTIONS.find((one) => one.id === id) ?? NONE;
}

const NONE: Caution = { id: "instructions", text: "", source: "" };
