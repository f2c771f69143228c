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
const CHANGES = "5 CFR 1312.25 (rev. 1 Jan 2001), the rule of one federal office, as an example";

/** Every fault's words. They are true whatever the lock does: what the lock does is added by `lockConsequences`. */
export const FAULT_WORDS: Readonly<Record<HandoverFault, FaultWords>> = {
  "fit-unchecked": {
    happened: "You said that the lock is fitted before you had made every check of its fit.",
    harmed: "The holders: a bad fit shows only later, as a lock that is hard to zero or opens badly.",
    instead: "Make every check after you moved the last part. Then say that it is fitted.",
    source: COMMON,
  },
  "taken-apart": {
    happened: "You took the lock apart. Ring, zero and every proof so far are void.",
    harmed: "You: all of that has to be done again. The holders, if nobody does it.",
    instead: "Check the fit before you align the ring. What is wrong with it then costs nothing but the fit.",
    source: COMMON,
  },
  "parts-spoiled": {
    happened: "You spoiled the parts and sent for new ones.",
    harmed: "The customer, who pays for a second lock and waits for it.",
    instead: "Measure before you cut. Put thread locker on the key's screw and nowhere else.",
    source: COMMON,
  },
  "bad-fit-left": {
    happened: "You handed over a lock that is not fitted right.",
    harmed: "The holders: what zero and proofs do not show now, they meet later.",
    instead: "Take the lock apart, fix what the checks show, then set and prove everything again.",
    source: COMMON,
  },
  "aligned-unmeasured": {
    happened: "You fastened the ring before the mounting height was settled.",
    harmed: "Anyone who cannot reach the dial, and you: you may have to drill and align again.",
    instead: "Measure first. Above 48 inches, stop until the height is settled. Then align the ring.",
    source: `${ACCESS}; the order: ${COMMON}`,
  },
  "zeroed-on-loose-ring": {
    happened: "You set a zero while the ring was loose. It does not count.",
    harmed: "The holders: a ring that moves later makes every number they dial wrong.",
    instead: "Align the ring and clamp it, then set the zero.",
    source: COMMON,
  },
  "ring-moved": {
    happened: "You loosened the ring. Every zero and every proof so far is void.",
    harmed: "The holders, if nobody notices: the combination as written may no longer open the lock.",
    instead: "Leave a clamped ring alone. If it must move, set and prove everything again.",
    source: COMMON,
  },
  "dialed-untrue": {
    happened: "You dialed a lock that is not ready: the ring is loose, or the zero is not set in both directions.",
    harmed: "You: an opening proves nothing, and a failure may not be the lock's fault.",
    instead: "Align the ring, set the zero in both directions, then dial.",
    source: COMMON,
  },
  "proved-held-back": {
    happened: "You dialed while the holdback held the bolt back. That proves nothing about the combination.",
    harmed: "The holders, who would trust a false proof.",
    instead: "Release the holdback before you prove.",
    source: COMMON,
  },
  "changed-untrue": {
    happened: "You changed the combination on a lock that is not ready.",
    harmed: "The holders: once the ring or the zero is set, the written numbers may be wrong.",
    instead: "Align the ring and set the zero first.",
    source: COMMON,
  },
  "changed-untried": {
    happened: "You changed the combination of a lock you had never opened. If it fails now, nobody knows why.",
    harmed: "The customer, who may get a faulty lock.",
    instead: "Open it with the shipped combination first, with the door open.",
    source: COMMON,
  },
  "rules-broken": {
    happened: "You set a combination that the rules of this lock do not allow.",
    harmed: "The holders: the rules rule out numbers that are easy to guess and numbers the draw disturbs.",
    instead: "Choose numbers that the rules allow, and set those.",
    source: RULES,
  },
  "set-off": {
    happened: "The numbers you set are not the numbers that are written down.",
    harmed: "The holders: they dial what is written down.",
    instead: "Prove it with the door open, find out how far it is off, and set it again.",
    source: COMMON,
  },
  "pack-spoiled": {
    happened: "You turned the key while the wheels were not lined up. The wheel pack now opens to no combination.",
    harmed: "You: the pack must be taken apart. With the door shut, it would have harmed everyone.",
    instead: "Dial every number to the changing index. Turn the key only if it goes fully home. Never force it.",
    source: COMMON,
  },
  "second-too-early": {
    happened: "The second person dialed before you had opened the lock three times in a row. It does not count.",
    harmed: "The second person, who trusts an unproved lock.",
    instead: "Open it three times in a row yourself. Then let the second person open it.",
    source: COMMON,
  },
  "held-back-turned": {
    happened: "You turned the dial to throw the bolt, but the holdback holds the bolt back. The lock is not secure.",
    harmed: "Anyone who believes that the door locks.",
    instead: "Release the holdback, then spin off.",
    source: COMMON,
  },
  "shut-unproved": {
    happened: "You shut the door on a combination that was not proved with the door open.",
    harmed: "Everyone who needs that door, and anyone behind it.",
    instead: "Open it with the shipped combination. Change it. Open it three times in a row. Then shut the door.",
    source: PROVING,
  },
  "shut-without-second": {
    happened: "You shut the door before a second person had opened the lock.",
    harmed: "The holders: that it opens for you does not show that it opens for them.",
    instead: "Let a second person open it while the door is open.",
    source: TWO_PEOPLE,
  },
  "shut-unobserved": {
    happened: "You shut a door that was not proved from outside, and nobody inside can open it.",
    harmed: "You and the customer, if it does not open from outside.",
    instead: "Test the inside release. Show it to someone, let that person stay inside, then shut the door.",
    source: `${COMMON}; only where people can enter`,
  },
  "shut-not-spun-off": {
    happened: "You shut the door without spinning the lock off. The wheels may still be in line.",
    harmed: "The customer, if the door only looks locked.",
    instead: "Spin off before you shut the door.",
    source: SPINNING,
  },
  "shut-held-back": {
    happened: "You shut the door with the holdback set.",
    harmed: "The customer, whose door only looks locked.",
    instead: "Release the holdback and spin off before you shut the door.",
    source: COMMON,
  },
  "proved-not-spun-off": {
    happened: "You dialed from outside before you spun the lock off. It does not count.",
    harmed: "The holders, who would trust a false proof: wheels that are still in line open without dialing.",
    instead: "Spin off, then dial the whole combination from outside.",
    source: COMMON,
  },
  "opened-by-force": {
    happened: "The door was opened by force. On a real door that takes hours and the lock must be replaced.",
    harmed: "Everyone: the customer, the door, and anyone waiting behind it.",
    instead: "Prove the lock with the door open. Where people can enter, keep someone inside who can open.",
    source: COMMON,
  },
  "recorded-early": {
    happened: "You tried to record proofs that were not made. The record was not accepted.",
    harmed: "Anyone who reads it later and relies on it.",
    instead: "Make every proof first. The record comes last.",
    source: COMMON,
  },
  "combination-in-record": {
    happened: "You wrote the combination into the record. The form refused it.",
    harmed: "Everyone behind that door: people who may not have the combination read the record.",
    instead: "Write who holds the combination, never what it is.",
    source: COMMON,
  },
  "shipped-left": {
    happened: "You tried to hand over a lock that still has its shipped combination.",
    harmed: "The customer: anyone who has seen such a lock new can open it.",
    instead: "Change it to the customer's own combination when the lock is placed in use.",
    source: CHANGES,
  },
  "holdback-left-on": {
    happened: "You tried to hand over a door with the holdback set. It does not lock.",
    harmed: "The customer, who leaves the door open without knowing it.",
    instead: "Release the holdback and spin off.",
    source: COMMON,
  },
  "someone-left-inside": {
    happened: "You tried to hand over the door with someone still inside.",
    harmed: "The person inside.",
    instead: "Let everyone out first.",
    source: EGRESS,
  },
  "signed-too-early": {
    happened: "You signed, but something is missing. The signature was not accepted.",
    harmed: "Anyone who relies on your name.",
    instead: "Do what is missing, then sign.",
    source: COMMON,
  },
  "shut-in": {
    happened: "Someone is shut inside: the door is locked, and no tested way out was shown to that person.",
    harmed: "The person inside, who has no light, air or help if nobody notices.",
    instead: "Test the inside release with the door open, and show it to anyone who stays inside.",
    source: EGRESS,
  },
  "locked-out": {
    happened: "You are locked out: the door is locked, the written numbers do not open it, and nobody inside can.",
    harmed: "The customer, whose door must be opened by force.",
    instead: "Prove the lock with the door open. Where people can enter, keep someone inside who can open.",
    source: COMMON,
  },
};
