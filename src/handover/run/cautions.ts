/** A caution, and where it comes from. */
export interface Caution {
  readonly id: "instructions" | "licensed" | "egress" | "height" | "door" | "holdback" | "record";
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
    text: "Local codes, the authority having jurisdiction and licensed practice decide what may be fitted, and by whom.",
    source: COMMON,
  },
  {
    id: "egress",
    text: "A door that people must get out by opens from their side without a key, special knowledge or effort, in one motion.",
    source: "IBC 1010.2 (2021), as an example; your local code decides",
  },
  {
    id: "height",
    text: "Operable parts stand from 34 to 48 inches above the floor and work with one hand, without tight grasping, pinching or twisting of the wrist, by 5 pounds of force at most; locks for security alone may stand at any height.",
    source: "2010 ADA Standards 404.2.7 and 309.4; IBC 1010.2 (2021)",
  },
  {
    id: "door",
    text: "Prove a new combination at least three times before the door is shut; then keep somebody inside who can open.",
    source: `MIL-HDBK-1013/8 (1989), section 2, item d; somebody inside: ${COMMON}`,
  },
  { id: "holdback", text: "A door whose bolt is held back does not lock.", source: COMMON },
  {
    id: "record",
    text: "Never write the combination down in a record. A practice result is not a certificate.",
    source: COMMON,
  },
];

/** A caution by its name. */
export function caution(id: Caution["id"]): Caution {
  return CAUTIONS.find((one) => one.id === id) ?? NONE;
}

const NONE: Caution = { id: "instructions", text: "", source: "" };
