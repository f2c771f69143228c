import type { FaultCode } from "./fault";

/** Kinds of faults in a few words, for tables and labels. */
export const FAULT_NAMES: Readonly<Record<FaultCode, string>> = {
  "wrong-way": "wrong way",
  "too-few-turns": "too few turns",
  "too-many-turns": "too many turns",
  "stopped-short": "stopped short",
  "ran-past": "ran past",
  "came-back": "came back",
  "extra-turnback": "turned back",
  "not-drawn": "not drawn",
  "paused-too-long": "paused too long",
};

/** A fault in a few words: "ran past at number 2". */
export const faultTitle = (code: FaultCode, number: number) => `${FAULT_NAMES[code]} at number ${number}`;
