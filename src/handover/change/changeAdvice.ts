import { type Advice, adviceFor, type Help } from "../../dialing/advice";
import type { DialingState } from "../../dialing/dialingMachine";
import { progressOf } from "../../dialing/progress";
import { faceText } from "../../dialing/words";
import { PROOFS_WANTED } from "../../drill/marking/jobRule";
import { opposite } from "../../lock/dial";
import { spinOffRule } from "../../lock/spinOffRule";
import { countInWords, countOrNone, countWord, sizeText } from "../../wording/amountWords";
import type { Change } from "./change";
import type { ChangeState } from "./changeInHand";
import type { EncoderChange } from "./encoderChange";
import { PackChange } from "./packChange";
import type { Proof } from "./proof";

const still = (say: string, detail = ""): Advice => ({ turn: null, say, detail });

/** What to do with the key, the button or the door, where it is not the dial's turn. */
const ACTS: Partial<Record<ChangeState, (change: Change) => Advice>> = {
  presentStands: () => still("Every wheel is at the key port. Insert the change key."),
  keyIn: () => still("Turn the key.", "it holds the gates and frees the wheels"),
  keyForced: (change) => still("Do not turn the key. Remove it.", change instanceof PackChange ? astray(change) : ""),
  newStands: () => still("The new combination is dialed. Turn the key back."),
  keyBack: () => still("Remove the key.", "the gates are clamped where the wheels are now"),
  spoiled: () => still("The wheel pack is spoiled. Leave the door open.", "it must be taken apart and set again"),
  presentOpen: () => still("Open. Press the change button inside the door.", "while the bolt is back"),
  doorShut: () => still("The door is shut. See the result."),
};

/** The wheel that stands farthest from the key port, in words. */
function astray(change: PackChange): string {
  const errors = change.keyed.keyErrors().map(Math.abs);
  const most = Math.max(...errors);
  return `wheel ${errors.indexOf(most) + 1} is ${sizeText(most)} graduations away from the key port`;
}

const startText = ({ hand }: Change): string => {
  const first = hand.profile.procedure[0];
  const number = faceText(hand.combination[0] ?? 0, hand.profile);
  return `turn ${first?.turn}, at least ${countInWords(first?.arrivals ?? 0, "arrival")} at ${number}`;
};

const startOver = (change: Change, say: string, detail = ""): Advice => ({
  turn: change.profile.procedure[0]?.turn ?? null,
  say: `${say} Start over: ${startText(change)}.`,
  detail,
});

/** A wheel behind the hand that no longer stands as it should. */
const spoiledWheel = (change: Change): string | null => {
  const { hand, profile } = change;
  if (hand.pack === null || profile.kind !== "wheel-pack") return null;
  const { step } = progressOf(hand);
  const errors = hand.pack.errors();
  const k = errors.findIndex((e, i) => i < step && Math.abs(e) > (profile.wheelPack.gateTolerance[i] ?? 0));
  return k < 0 ? null : `wheel ${k + 1} is ${sizeText(errors[k] ?? 0)} graduations off`;
};

/** What follows the last number: the key, or the turn that ends an entry. */
const afterLast = (change: Change): Advice => {
  if (!(change instanceof PackChange)) {
    const { turn, travel } = change.profile.draw;
    return { turn, say: `Stop here. Now turn ${turn} by ${travel} or more.`, detail: "that ends this entry" };
  }
  return still(change.state === "dialingNew" ? "Stop here. Turn the key back." : "Stop here. Insert the change key.");
};

/** Whether the first number is still to be begun. The turn that ended an entry may go on a little: no wrong way. */
const isFresh = (change: Change, dialing: DialingState): boolean =>
  dialing === "waiting" || (dialing === "wrongWay" && !(change instanceof PackChange));

/** Turned about after the last number: too far for the key, or on the way to the end of an entry. */
const pastLast = (change: Change): Advice =>
  change instanceof PackChange
    ? startOver(change, "You turned past the last number.")
    : { ...afterLast(change), say: `Turn on ${change.profile.draw.turn}.` };

/** Dialing without a draw: to the changing index, or as an entry. */
const numbersOnly = (change: Change, dialing: DialingState, help: Help, where: string): Advice | null => {
  const { hand } = change;
  const isLast = progressOf(hand).step === change.profile.procedure.length - 1;
  if (help === "counts") return adviceFor(hand, dialing, help);
  if (isFresh(change, dialing)) {
    return { turn: change.profile.procedure[0]?.turn ?? null, say: `${where}: ${startText(change)}.`, detail: "" };
  }
  const isOff = dialing === "turning" || dialing === "resting" ? spoiledWheel(change) : null;
  if (isOff !== null) return startOver(change, "This wheel will not line up.", isOff);
  if (dialing === "resting" && isLast) return afterLast(change);
  return dialing === "drawing" ? pastLast(change) : adviceFor(hand, dialing, help);
};

const ENTRY: Partial<Record<ChangeState, string>> = {
  firstEntry: "Dial new, first time",
  secondEntry: "Dial new again",
  entriesDiffer: "The two entries differed and nothing is changed. Dial new, first time",
};

/** Turning to the first number would only draw the bolt again: the turns of the spin-off, counted down. */
const spinOffAdvice = (change: Change): Advice => {
  const turn = opposite(change.profile.draw.turn);
  const { turns } = spinOffRule(change.profile);
  const left = Math.ceil(change.proof?.attempt.spinOff?.turnsLeft ?? turns);
  const more = left < turns ? "more " : "";
  return {
    turn,
    say: `Spin off: turn ${turn}, ${countInWords(left, `${more}turn`)}.`,
    detail: "",
  };
};

const proving = (change: Change, proof: Proof, dialing: DialingState, help: Help): Advice | null => {
  if (help === "full" && change.state === "proved" && dialing === "open") {
    return still(`Proved ${countWord(PROOFS_WANTED)} times. You may shut the door.`);
  }
  if (help === "full" && proof.mustSpinOff) return spinOffAdvice(change);
  const advice = adviceFor(proof.attempt, dialing, help);
  return advice === null || !isFresh(change, dialing) || help === "counts"
    ? advice
    : {
        turn: change.profile.procedure[0]?.turn ?? null,
        say: `Prove it at the opening index: ${startText(change)}.`,
        detail: provedText(change),
      };
};

const provedText = ({ proofs }: Change) => `${countOrNone(proofs)} of ${countWord(PROOFS_WANTED)} proofs, door open`;

/**
 * What to tell the hand now.
 *
 * @param dialing - where the dialing of the numbers asked for now is
 * @param help - `full` tells what to do and how far; `counts` only which number and how many arrivals; `silent` nothing
 * @returns null where nothing is to be told
 */
export function changeAdvice(change: Change, dialing: DialingState, help: Help): Advice | null {
  const { state, proof } = change;
  if (help === "silent") return null;
  const act = ACTS[state];
  if (act !== undefined) return help === "full" ? act(change) : null;
  if (proof !== null) return proving(change, proof, dialing, help);
  if (state === "dialingNew") return numbersOnly(change, dialing, help, "Dial new, to the changing index");
  if (change instanceof PackChange) return numbersOnly(change, dialing, help, "Dial current, to the changing index");
  const entry = ENTRY[state];
  return entry === undefined ? presentEncoder(change, dialing, help) : numbersOnly(change, dialing, help, entry);
}

const presentEncoder = (change: EncoderChange, dialing: DialingState, help: Help): Advice | null => {
  const advice = adviceFor(change.attempt, dialing, help);
  return advice === null || dialing !== "waiting" || help === "counts"
    ? advice
    : { turn: advice.turn, detail: advice.detail, say: `Dial current to open the lock: ${startText(change)}.` };
};

const STATE_WORDS: Readonly<Record<ChangeState, string>> = {
  dialingPresent: "dialing the current combination",
  presentStands: "the current combination is at the key port",
  keyIn: "the key is in",
  keyForced: "the key is in, wheels away from the key port",
  dialingNew: "key turned, dialing the new combination",
  newStands: "the new combination is dialed",
  keyBack: "the key is turned back",
  presentRefused: "the current combination did not open it",
  presentOpen: "open with the current combination",
  firstEntry: "dialing the new combination, first time",
  secondEntry: "dialing the new combination, second time",
  entriesDiffer: "the two entries differed, nothing is changed",
  proving: "proving the new combination",
  proofRefused: "the new combination did not open",
  proved: "the new combination is proved",
  spoiled: "the wheel pack is spoiled",
  doorShut: "the door is shut",
};

/** Where the change is, in words that fit a sentence. */
export function changeStateInWords(state: ChangeState): string {
  return STATE_WORDS[state];
}
