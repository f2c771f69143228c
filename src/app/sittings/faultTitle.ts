import type { FaultCode } from "../../dialing/fault";

const TITLES: Readonly<Record<FaultCode, string>> = {
  "wrong-way": "wrong way",
  "too-few-turns": "too few turns",
  "too-many-turns": "too many turns",
  "stopped-short": "stopped short",
  "ran-past": "ran past",
  "came-back": "came back",
  "extra-turnback": "turned back on the way",
  "not-drawn": "not drawn",
  "paused-too-long": "paused too long",
};

/** A kind of fault in a few words: "ran past". */
export const faultWord = (code: FaultCode) => TITLES[code];

/** A fault in a few words, for a table: "ran past at number 2". */
export function faultTitle(code: FaultCode, number: number): string {
  return `${TITLES[code]} at number ${number}`;
}
