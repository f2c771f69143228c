import { PROOFS_WANTED } from "../../../../drill/marking/jobRule";
import type { Change } from "../../../../handover/change/change";
import { type ChangeFault, combinationText } from "../../../../handover/change/changeFault";
import type { ActRefusal, ChangeAct, ChangeState } from "../../../../handover/change/changeInHand";
import type { KeyPlace } from "../../../../handover/change/keyedPack";
import { PackChange } from "../../../../handover/change/packChange";
import { countInWords, countWord } from "../../../../wording/amountWords";

/** Why an act did nothing, or why there is no such act. */
export type RefusedAct = ActRefusal | "turned-already" | "door-shut";

/** A refusal in a sentence. */
const REFUSED: Readonly<Record<RefusedAct, string>> = {
  "bolt-drawn": "The bolt is back and the fence lies in the gates, so the key does not go in. Throw the bolt first.",
  "not-in": "The key is not in the lock.",
  "already-in": "The key is already in the lock.",
  "already-turned": "A turned key does not come out. Turn it back first.",
  "not-turned": "The key is not turned.",
  "pack-spoiled": "The wheel pack is spoiled. Turning the key again will not fix it.",
  "bolt-out": "Nothing happens: the button works only while the bolt is back.",
  "already-pressed": "The lock already waits for the new combination.",
  "key-in-door": "The key is still in the lock. Remove it before you shut the door.",
  "turned-already": "The key is already turned.",
  "door-shut": "The door is shut.",
};

/** A refusal as the hand feels it, with no word of what to do. */
const FELT: Readonly<Record<RefusedAct, string>> = {
  ...REFUSED,
  "bolt-drawn": "The key does not go in.",
  "already-turned": "The key does not come out.",
  "pack-spoiled": "The key does not turn.",
  "bolt-out": "Nothing happens.",
  "already-pressed": "Nothing happens.",
  "key-in-door": "The key is still in the lock.",
};

/** Where the key has to be for an act with it, and why there is no such act where it is. */
const KEY_NEEDS: Partial<Record<ChangeAct, Partial<Record<KeyPlace, RefusedAct>>>> = {
  insertKey: { in: "already-in", turned: "already-in" },
  turnKey: { out: "not-in", turned: "turned-already" },
  turnKeyBack: { out: "not-in", in: "not-turned" },
  withdrawKey: { out: "not-in" },
};

/** Why there is no such act now, whoever tries; null where there is one, be it in vain. */
export function whyNot(change: Change, act: ChangeAct): RefusedAct | null {
  if (change.isDoorShut) return "door-shut";
  return change instanceof PackChange ? (KEY_NEEDS[act]?.[change.keyed.key] ?? null) : null;
}

/** A refusal in words. @param isFelt - whether only as the hand feels it, with no word of what to do */
export const refusedWords = (why: RefusedAct, isFelt: boolean): string => (isFelt ? FELT[why] : REFUSED[why]);

/** What the hand feels as a wheel pack is spoiled. */
export const SOMETHING_GAVE = "The key turned hard, and something gave.";

/** What the last act met with, as far as a hand feels it; empty where it went as meant. */
export function feltWords(change: Change, refused: RefusedAct | null): string {
  if (refused !== null) return FELT[refused];
  const gave = change instanceof PackChange && change.isSpoiled && change.keyed.key === "turned";
  return gave ? SOMETHING_GAVE : "";
}

/** The parts of the work, in order. */
export const STAGES = {
  key: ["Dial current", "Insert key", "Dial new", "Remove key", "Prove"],
  dial: ["Dial current", "Press button", "Dial new", "Dial new again", "Prove"],
} as const;

/** Which part of the work a state belongs to, counted from 0. */
export const STAGE_OF: Readonly<Record<ChangeState, number>> = {
  dialingPresent: 0,
  presentRefused: 0,
  presentStands: 1,
  keyIn: 1,
  keyForced: 1,
  spoiled: 1,
  presentOpen: 1,
  dialingNew: 2,
  newStands: 2,
  firstEntry: 2,
  entriesDiffer: 2,
  keyBack: 3,
  secondEntry: 3,
  proving: 4,
  proofRefused: 4,
  proved: 4,
  doorShut: 4,
};

/** Whether what the lock is set to may be told: once the new combination has been tried, or it is too late. */
export function isRevealed(change: Change): boolean {
  const { proof, proofs, state, isDoorShut } = change;
  const isSpoiled = change instanceof PackChange && change.isSpoiled;
  return isSpoiled || isDoorShut || (proof !== null && (proofs > 0 || state === "proofRefused"));
}

/** How the exercise stands, in one sentence. */
export function headline(change: Change, faults: readonly ChangeFault[]): string {
  const { setCombination, profile, proofs, proof, isDoorShut } = change;
  if (change instanceof PackChange && change.isSpoiled) return "The wheel pack is spoiled: it opens to no combination.";
  if (proof === null) return isDoorShut ? "You shut the door. Nothing was changed." : "";
  if (!isRevealed(change) || setCombination === null) {
    return "The combination is changed. Prove it to see what it is set to.";
  }
  const opens = `It opens to ${combinationText(setCombination, profile)}.`;
  if (faults.some(({ code }) => code === "locked-out")) {
    return `Locked out: ${combinationText(change.wanted, profile)} does not open it.`;
  }
  if (faults.length > 0) return opens;
  return proofs >= PROOFS_WANTED
    ? `Changed and proved ${countWord(PROOFS_WANTED)} times. ${opens}`
    : `${opens} ${moreProofs(PROOFS_WANTED - proofs)} before the door is shut.`;
}

const moreProofs = (count: number) => `Prove it ${countInWords(count, "more time")}`;
