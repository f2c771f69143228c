import { all, any, type Condition, holds } from "./condition";
import type { Situation } from "./situation";

/** Something that must be shown before a door is handed over. */
export interface RequiredProof {
  readonly code: ProofCode;
  readonly condition: Condition;
  /** What is missing while it does not hold: a sentence. */
  readonly missing: string;
  /** Where the demand comes from. */
  readonly source: string;
}

/** Names of the required proofs. */
export type ProofCode =
  | "fit-checked"
  | "mounting"
  | "ring"
  | "zero"
  | "shipped-tried"
  | "own-combination"
  | "rules-kept"
  | "proved-three-times"
  | "second-person"
  | "way-out"
  | "observer-inside"
  | "proved-from-outside"
  | "holdback-shown"
  | "holdback-off"
  | "spun-off"
  | "nobody-inside"
  | "record";

const COMMON = "common practice, no source";
const EGRESS = "IBC 1010.2 (2021), as the example of an egress rule";

const BEFORE_RECORD: readonly RequiredProof[] = [
  {
    code: "fit-checked",
    condition: any("fit.asFound", "fitChecks.made"),
    missing: "The lock is not fitted, or not every check of its fit was made.",
    source: COMMON,
  },
  {
    code: "mounting",
    condition: any("mounting.inRange", "mounting.authorized"),
    missing: "The mounting height is not settled: it must be 34 to 48 inches, or have an exception in writing.",
    source: "2010 ADA Standards 404.2.7 and 309.4; the exception in writing: common practice, no source",
  },
  { code: "ring", condition: "ring.aligned", missing: "The ring is not aligned and clamped.", source: COMMON },
  {
    code: "zero",
    condition: any("zero.bothSet", "zero.byRing"),
    missing: "The zero is not set in both directions.",
    source: COMMON,
  },
  {
    code: "shipped-tried",
    condition: "shippedTry.tried",
    missing: "The shipped combination has not opened the lock with the door open.",
    source: COMMON,
  },
  {
    code: "own-combination",
    condition: "combination.ownTrue",
    missing: "The lock does not have a combination of the customer's own that opens as written.",
    source: "5 CFR 1312.25 (rev. 1 Jan 2001), the rule of one federal office: changed when placed in use",
  },
  {
    code: "rules-kept",
    condition: "rules.kept",
    missing: "The combination is not one that the lock's rules allow.",
    source: "MIL-HDBK-1013/8 (1989), section 2",
  },
  {
    code: "proved-three-times",
    condition: "proofs.thrice",
    missing: "The combination has not opened the lock three times in a row with the door open.",
    source: "MIL-HDBK-1013/8 (1989), section 2, item d: at least three times before the door is closed",
  },
  {
    code: "second-person",
    condition: "second.proved",
    missing: "No second person has opened the lock with the new combination.",
    source: 'NAVEDTRA 14244, "Securing a Security Container": two people try it before it is closed',
  },
  {
    code: "way-out",
    condition: "wayOut.free",
    missing: "The inside release has not been tested.",
    source: EGRESS,
  },
  {
    code: "observer-inside",
    condition: "observed.done",
    missing: "The door has not been shut with someone inside who can open.",
    source: COMMON,
  },
  {
    code: "proved-from-outside",
    condition: "outside.proved",
    missing: "The lock has not been spun off and then opened from outside.",
    source: COMMON,
  },
  {
    code: "holdback-shown",
    condition: "shown.bothWays",
    missing: "The holdback has not been shown both set and released.",
    source: COMMON,
  },
];

/** Everything that must have been shown before the record can be written. */
export const IS_READY_FOR_RECORD: Condition = all(...BEFORE_RECORD.map(({ condition }) => condition));

/** Every required proof, in the order of the job. */
export const REQUIRED_PROOFS: readonly RequiredProof[] = [
  ...BEFORE_RECORD,
  {
    code: "holdback-off",
    condition: "holdback.off",
    missing: "The holdback is set: the door does not lock.",
    source: COMMON,
  },
  {
    code: "spun-off",
    condition: "bolt.spunOff",
    missing: "The lock is not spun off.",
    source: "MIL-HDBK-1013/8 (1989), section 2, item e.8: at least four full revolutions in one direction",
  },
  {
    code: "nobody-inside",
    condition: "inside.nobody",
    missing: "Someone is still inside.",
    source: EGRESS,
  },
  {
    code: "record",
    condition: "record.written",
    missing: "The record is not written, or it is older than the last change.",
    source: "5 CFR 1312.25 (rev. 1 Jan 2001), the rule of one federal office, as an example",
  },
];

/** Every required proof is there: the door may be signed off. */
export const IS_COMPLETE: Condition = all(...REQUIRED_PROOFS.map(({ condition }) => condition));

/** Which required proofs a situation lacks, in the order of the job. */
export function missingProofs(situation: Situation): RequiredProof[] {
  return REQUIRED_PROOFS.filter(({ condition }) => !holds(condition, situation));
}
