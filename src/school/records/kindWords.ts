import type { SentKind } from "../wire/recordsWire";

/** A kind of record that goes to the class, at the beginning of a line. */
export const KIND_WORDS: Readonly<Record<SentKind, string>> = {
  attempts: "Attempt",
  zeroings: "Zeroing",
  jobs: "Job",
  sittings: "Sitting",
  declarations: "Skill shown",
};

/** Letters of an id that tell records of one bench apart. */
const SHORT = 8;

/** As much of an id as tells records of one bench apart. */
export const shortId = (id: string): string => id.slice(0, SHORT);
