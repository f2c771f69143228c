import type { HandoverFault } from "./faultTriggers";

/** A fault of a handover, in words: each a sentence. */
export interface FaultWords {
  /** What followed at once. */
  readonly happened: string;
  /** Who is harmed by it, or would be. */
  readonly harmed: string;
  /** What should have been done. */
  readonly instead: string;
  /** Where that demand comes from. */
  readonly source: string;
}

const COMMON = "common practice, no source";
const ACCESS = "2010 ADA Standards 404.2.7 and 309.4";
const EGRESS = "IBC 1010.2 (2021), as the example of an egress rule";
const RULES = "MIL-HDBK-1013/8 (1989), section 2";
const PROVING = "MIL-HDBK-1013/8 (1989), section 2, item d: at least three times before the door is closed";
const TWO_PEOPLE = 'NAVEDTRA 14244, "Securing a Security Container": two people try it before it is closed';
const SPINNING = "MIL-HDBK-1013/8 (1989), section 2, item e.8: at least four full revolutions in one direction";
const CHANGES = "5 CFR 1312.25 (rev. 1 Jan 2001), as an example of an office's rule";

/** Every fault's words. */
export const FAULT_WORDS: Readonly<Record<HandoverFault, FaultWords>> = {
  "aligned-unmeasured": {
    happened: "You fastened the ring before it was settled that the lock may stay at this height.",
    harmed: "Whoever cannot reach the dial; and you, who may have to drill and align again.",
    instead: "Measure first, and above 48 inches ask for authorization, before anything is aligned.",
    source: `${ACCESS}; the order: ${COMMON}`,
  },
  "zeroed-on-loose-ring": {
    happened: "You set a zero against a ring that can still turn. It does not count.",
    harmed: "The holders: the numbers they dial would not be the numbers the lock takes.",
    instead: "Align the ring and clamp it, then set the zero.",
    source: COMMON,
  },
  "ring-moved": {
    happened: "You loosened the ring. Every zero and every proof so far was of another index, and is void.",
    harmed: "The holders, if it is not noticed: the combination as written may no longer open.",
    instead: "Leave a clamped ring alone; if it must move, set and prove everything again.",
    source: COMMON,
  },
  "dialed-untrue": {
    happened: "You dialed a lock that does not read true: the ring is loose, or the zero is not set from both sides.",
    harmed: "You: an opening shows nothing, and a failure may not be the lock's.",
    instead: "Align the ring, set the zero from both sides, and then dial.",
    source: COMMON,
  },
  "proved-held-back": {
    happened: "You dialed while the holdback held the bolt back. That shows nothing about the combination.",
    harmed: "The holders, who would trust a proof that was none.",
    instead: "Take the holdback off before you prove.",
    source: COMMON,
  },
  "changed-untrue": {
    happened: "You changed the combination on a lock that does not read true.",
    harmed: "The holders: what is written down is not what is set.",
    instead: "Align the ring and set the zero first.",
    source: COMMON,
  },
  "changed-untried": {
    happened: "You changed the combination of a lock that had never been opened. If it fails now, nobody knows why.",
    harmed: "The customer, who may get a bad lock with a good excuse.",
    instead: "Open it with the shipped combination first, the door open.",
    source: COMMON,
  },
  "rules-broken": {
    happened: "You set a combination that the rules of this lock do not allow.",
    harmed: "Whoever relies on the lock: such numbers are guessed sooner, or the draw disturbs them.",
    instead: "Choose numbers that the rules allow, and set those.",
    source: RULES,
  },
  "set-off": {
    happened: "What you set is not what is written down. The numbers as written do not open it.",
    harmed: "The holders, who are locked out as soon as the door is shut.",
    instead: "Prove it with the door open, find how far off it is, and set it again.",
    source: COMMON,
  },
  "pack-spoiled": {
    happened: "You turned the key in wheels that did not stand in line. The pack opens to no numbers now.",
    harmed: "You: the pack must be taken apart. With the door shut it would have been everybody.",
    instead: "Dial every number to the changing index, feel the key go in, and only then turn it.",
    source: COMMON,
  },
  "second-too-early": {
    happened: "The second person dialed before you had opened it three times in a row. It does not count.",
    harmed: "The second person, whose trust you spend on an unproven lock.",
    instead: "Open it three times in a row yourself, then hand it over.",
    source: COMMON,
  },
  "held-back-turned": {
    happened: "You turned the dial to throw the bolt, and the holdback held it back. The lock is not secure.",
    harmed: "Whoever believes that the door locks.",
    instead: "Take the holdback off, then spin off.",
    source: COMMON,
  },
  "shut-unproved": {
    happened: "You shut the door on a combination that had not been proved with the door open.",
    harmed: "Everybody who needs that door, and whoever is behind it.",
    instead: "Open it with the shipped combination; change it; open it three times in a row; then shut the door.",
    source: PROVING,
  },
  "shut-without-second": {
    happened: "You shut the door before a second person had opened the lock.",
    harmed: "The holders: that it opens to your hand does not show that it opens to theirs.",
    instead: "Let a second person open it, the door open.",
    source: TWO_PEOPLE,
  },
  "shut-unobserved": {
    happened: "You shut an unproven door with nobody inside who can open it.",
    harmed: "You and the customer, if it does not open from outside.",
    instead: "Show somebody the release, let that person stay inside, and then shut the door.",
    source: COMMON,
  },
  "shut-not-spun-off": {
    happened: "You shut the door with the wheels still in line. A small turn of the dial opens it.",
    harmed: "The customer, whose door looks locked.",
    instead: "Spin off before you shut it.",
    source: SPINNING,
  },
  "shut-held-back": {
    happened: "You shut the door with the bolt held back. A held-back door does not lock: anybody pulls it open.",
    harmed: "The customer, whose door looks locked.",
    instead: "Take the holdback off and spin off before you shut it.",
    source: COMMON,
  },
  "proved-not-spun-off": {
    happened: "You dialed from outside on wheels that had not been spun off. That shows nothing.",
    harmed: "The holders, who would trust a proof that was none.",
    instead: "Spin off, then dial the whole combination from outside.",
    source: COMMON,
  },
  "opened-by-force": {
    happened: "The door had to be opened by force. It took hours, and the lock is to be replaced on a real door.",
    harmed: "Everybody: the customer's day, the door, and whoever waited behind it.",
    instead: "Keep somebody inside who can open, and prove with the door open.",
    source: COMMON,
  },
  "recorded-early": {
    happened: "You wanted to record proofs that had not been made. The record does not stand.",
    harmed: "Whoever reads it later and relies on it.",
    instead: "Make every proof first; the record comes last.",
    source: COMMON,
  },
  "combination-in-record": {
    happened: "You wrote the combination into the record. The form refused it.",
    harmed: "Everybody behind that door: a record is read by people who may not hold the combination.",
    instead: "Write who holds it, never what it is.",
    source: COMMON,
  },
  "shipped-left": {
    happened: "You wanted to hand over a lock with the combination it came with.",
    harmed: "The customer: whoever has seen such a lock new can open it.",
    instead: "Change it to one of the customer's own when it is placed in use.",
    source: CHANGES,
  },
  "holdback-left-on": {
    happened: "You wanted to hand over a door whose bolt is held back. It does not lock.",
    harmed: "The customer, who goes home from an open door.",
    instead: "Take the holdback off and spin off.",
    source: COMMON,
  },
  "someone-left-inside": {
    happened: "You wanted to hand over the door with somebody still inside.",
    harmed: "Whoever is inside.",
    instead: "Let everybody out first.",
    source: EGRESS,
  },
  "signed-too-early": {
    happened: "You signed with something missing. The signature does not stand.",
    harmed: "Whoever relies on your name.",
    instead: "Make what is missing, then sign.",
    source: COMMON,
  },
  "shut-in": {
    happened: "Somebody is shut in behind a door that holds, and was not shown a way out that has been seen to work.",
    harmed: "Whoever is inside: without light, air or help if nobody notices.",
    instead: "Check the way out with the door open, and show it to whoever stays inside.",
    source: EGRESS,
  },
  "locked-out": {
    happened: "The door holds, the numbers do not open it, and nobody inside can. You are locked out.",
    harmed: "The customer, whose door is opened by force or not at all.",
    instead: "Prove it with the door open, and keep somebody inside who can open.",
    source: COMMON,
  },
};
