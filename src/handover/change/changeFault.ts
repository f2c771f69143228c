import { faceText, ordinalWord } from "../../dialing/words";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import type { Combination } from "../../lock/combination";
import { faceNumber, type Graduations, wrap } from "../../lock/dial";
import type { Profile } from "../../lock/profile";
import { agreeing, countOrNone, countWord, graduationsText, sizeText, timesWord } from "../../wording/amountWords";

/** What can go wrong in a change of combination. */
export type ChangeFaultCode =
  | "key-turned-unaligned"
  | "present-at-opening-index"
  | "wrong-index"
  | "number-set-off"
  | "present-refused"
  | "entries-differ"
  | "door-shut-unproved"
  | "locked-out";

/** A fault of a change, without words. */
export interface ChangeFault {
  readonly code: ChangeFaultCode;
  /** The number it was made at, from 1; 0 where it concerns them all. */
  readonly number: number;
  /** How large it is: graduations off, or a count of tries or proofs. */
  readonly size: number;
  /** Where several wheels are concerned: all of them, from 1. */
  readonly numbers?: readonly number[];
}

/** A fault with its words: what happened, what it did to the lock, and how to mend it, a sentence or two each. */
export interface WordedChangeFault extends ChangeFault {
  readonly happened: string;
  readonly did: string;
  readonly mend: string;
}

/** What the faults of a change are told from. */
export interface ChangeOutcome {
  readonly profile: Profile;
  /** What the lock was meant to be set to. */
  readonly wanted: Combination;
  /** What opens the lock now, or null for a spoiled pack. */
  readonly setTo: Combination | null;
}

/** A number set off by less than this is as good as anyone dials, graduations; a training value. */
export const SET_OFF_LEAST: Graduations = 0.25;

interface Case extends ChangeOutcome {
  readonly fault: ChangeFault;
}

interface Words {
  readonly happened: (c: Case) => string;
  readonly did: (c: Case) => string;
  readonly mend: (c: Case) => string;
}

const grads = (size: Graduations) => graduationsText(sizeText(size));
const numberText = (numbers: Combination | null, { fault, profile }: Case) =>
  numbers === null ? "nothing" : faceText(numbers[fault.number - 1] ?? 0, profile);

/** Numbers on the face in dialing order: "38-71-26", to a tenth where they are not whole. */
export function combinationText(numbers: Combination, profile: Profile): string {
  return numbers.map((number) => toTenth(number, profile)).join("-");
}

/** "45.8", or "45" where a tenth would say nothing. */
const toTenth = (number: Graduations, { graduations, numbersIncrease }: Profile) => {
  const tenths = Math.round(faceNumber(number, graduations, numbersIncrease) * 10) % (graduations * 10);
  return tenths % 10 === 0 ? String(tenths / 10) : (tenths / 10).toFixed(1);
};

const toleranceOf = ({ profile, fault }: Case): Graduations =>
  profile.kind === "wheel-pack" ? (profile.wheelPack.gateTolerance[fault.number - 1] ?? 0) : profile.stopTolerance;

const setOffDid = (c: Case): string => {
  const spare = toleranceOf(c) - c.fault.size;
  const wanted = numberText(c.wanted, c);
  const real = c.setTo === null ? "" : toTenth(c.setTo[c.fault.number - 1] ?? 0, c.profile);
  return spare >= 0
    ? `The lock opens at ${real}. Dialed exactly at ${wanted} it opens as well, with ${spare < 0.05 ? "nothing" : grads(spare)} to spare on that side.`
    : `The lock opens at ${real}. Dialed at ${wanted} it stays shut.`;
};

const others = ({ number, numbers = [] }: ChangeFault) => {
  const rest = numbers.filter((one) => one !== number);
  return rest.length === 0 ? "" : `, and ${agreeing(rest.length, "wheel")} ${rest.join(" and ")} too`;
};

const isKeyed = ({ profile }: Case) => profile.kind === "wheel-pack";
const AGAIN = "With the door open, change it again from what it is really set to.";

const WORDS: Readonly<Record<ChangeFaultCode, Words>> = {
  "key-turned-unaligned": {
    happened: ({ fault }) =>
      `You turned the key while wheel ${fault.number} was ${grads(fault.size)} away from the key port${others(fault)}.`,
    did: ({ fault }) =>
      `The key tore ${(fault.numbers ?? []).length > 1 ? "their gate rings off their clamps" : "its gate ring off its clamp"}. Nobody knows where a loose gate is; the lock opens to no combination.`,
    mend: () => "Leave the door open. Only an authorized person may take the pack apart and set it again.",
  },
  "present-at-opening-index": {
    happened: () => "You dialed the current combination to the opening index, not to the changing index.",
    did: ({ fault }) => `So every wheel was ${grads(fault.size)} away from the key port when you turned the key.`,
    mend: () => "For a change every number goes to the changing index, the current one and the new one.",
  },
  "wrong-index": {
    happened: () => "You dialed the new combination to the opening index, not to the changing index.",
    did: (c) =>
      `Every number of the lock is ${grads(c.fault.size)} off: it opens to ${c.setTo === null ? "nothing" : combinationText(c.setTo, c.profile)}.`,
    mend: () => AGAIN,
  },
  "number-set-off": {
    happened: (c) =>
      `Your ${ordinalWord(c.fault.number)} number, ${numberText(c.wanted, c)}, was set ${grads(c.fault.size)} off.`,
    did: setOffDid,
    mend: () => AGAIN,
  },
  "present-refused": {
    happened: ({ fault }) => `The lock refused the current combination ${timesWord(fault.size)}.`,
    did: () => "Each was a wrong try; after too many in a row an encoder lock makes you wait.",
    mend: () => "Dial the current combination to its stop, then press the change button.",
  },
  "entries-differ": {
    happened: ({ fault }) => `Your two entries of the new combination differed, by ${grads(fault.size)} at most.`,
    did: () => "The lock changed nothing: the current combination still opens it.",
    mend: () => "Dial the new one twice again.",
  },
  "door-shut-unproved": {
    happened: ({ fault }) =>
      `You shut the door after ${countOrNone(fault.size)} of ${countWord(PROOFS_WANTED)} proofs.`,
    did: () => "Only a proof with the door open shows a wrong setting while it can still be fixed.",
    mend: () => "Prove first, shut last, with someone inside who can open.",
  },
  "locked-out": {
    happened: (c) => `The door is shut, and ${combinationText(c.wanted, c.profile)} does not open the lock.`,
    did: (c) =>
      c.setTo === null
        ? "No combination opens it: the door has to be opened by force."
        : `It opens to ${combinationText(c.setTo, c.profile)}; on a real door you would not know that.`,
    mend: (c) =>
      isKeyed(c)
        ? "On a real door you would now be locked out, and whoever is inside locked in."
        : "If you know what the lock is really set to, dial that. Otherwise you are locked out.",
  },
};

/** Puts faults into words. */
export function wordChangeFaults(faults: readonly ChangeFault[], outcome: ChangeOutcome): WordedChangeFault[] {
  return faults.map((fault) => {
    const words = WORDS[fault.code];
    const c: Case = { ...outcome, fault };
    return { ...fault, happened: words.happened(c), did: words.did(c), mend: words.mend(c) };
  });
}

/**
 * How far each number is set from what was meant.
 *
 * @returns graduations in (-half a turn, half a turn], left positive
 */
export function settingErrors({ wanted, setTo, profile }: ChangeOutcome): Graduations[] {
  return wanted.map((number, k) => wrap((setTo?.[k] ?? number) - number, profile.graduations));
}

/** Whether wheels all stand off as they do where the opening index was taken for the changing index. */
export function isOtherIndex(errors: readonly Graduations[], index: Graduations, within: Graduations, perTurn: number) {
  return errors.every((error) => Math.abs(wrap(error + index, perTurn)) <= within);
}
