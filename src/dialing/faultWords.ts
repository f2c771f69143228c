import type { Combination } from "../lock/combination";
import { type Graduations, opposite } from "../lock/dial";
import type { Profile } from "../lock/profile";
import {
  agreeing,
  countInWords,
  countText,
  countWord,
  graduationsText,
  sizeText,
  timesWord,
} from "../wording/amountWords";
import type { HandledLock } from "./attempt";
import { type Fault, type FaultCode, faultsAtEnd, faultsSoFar } from "./fault";
import { legArrivals } from "./leg";
import { faceText } from "./words";

/** A fault with what it did and what to do about it. */
export interface WordedFault extends Fault {
  /** What the hand did: one sentence, without its period. */
  readonly happened: string;
  /** One or more sentences: what the hand did, what that did to the wheels, what to do next. */
  readonly message: string;
}

/** Where the wheels stood before and after the leg a fault was made in; empty lists in an encoder lock. */
interface WheelsAround {
  readonly before: readonly Graduations[];
  readonly after: readonly Graduations[];
}

interface Case {
  readonly fault: Fault;
  readonly profile: Profile;
  readonly combination: Combination;
  readonly wheels: WheelsAround;
  readonly opened: boolean;
  /** Whether the hand has not yet turned back from the number. */
  readonly isUnderWay: boolean;
  /** Whether the number has come to the index as often as asked. */
  readonly isCounted: boolean;
  /** Whether the hand ever began to turn to the number. */
  readonly wasBegun: boolean;
}

const numberOf = ({ fault, profile, combination }: Case) => faceText(combination[fault.number - 1] ?? 0, profile);
const stepOf = ({ fault, profile }: Case) => profile.procedure[fault.number - 1];
const grads = (size: Graduations) => graduationsText(sizeText(size));

const tooMany = (c: Case) => {
  const wanted = stepOf(c)?.arrivals ?? 0;
  const made = wanted + Math.round(c.fault.size / c.profile.graduations);
  return `You arrived ${timesWord(made)} at ${numberOf(c)}, where this lock asks for exactly ${countWord(wanted)}`;
};

const tooFew = (c: Case) => {
  const wanted = stepOf(c)?.arrivals ?? 0;
  const made = wanted - Math.round(c.fault.size / c.profile.graduations);
  const asked = `this lock asks for ${stepOf(c)?.rule === "at-least" ? "at least " : ""}${countWord(wanted)}`;
  return made <= 0
    ? `You never came to ${numberOf(c)}; ${asked} ${agreeing(wanted, "arrival")}`
    : `You arrived only ${timesWord(made)} at ${numberOf(c)}; ${asked}`;
};

const wrongWay = (c: Case) => {
  const first = stepOf(c)?.turn ?? "left";
  return `You turned ${opposite(first)} first; this lock begins to the ${first}`;
};

const notDrawn = (c: Case) =>
  `The draw to the ${c.profile.draw.turn} is not done: ${grads(c.fault.size)} to go to the stop`;

const paused = (c: Case) => {
  const limit = c.profile.kind === "dial-encoder" ? (c.profile.pauseLimit_s ?? 0) : 0;
  return `You rested at ${numberOf(c)} for longer than the ${countText(limit, "second")} this lock waits`;
};

const WHAT_HAPPENED: Readonly<Record<FaultCode, (c: Case) => string>> = {
  "wrong-way": wrongWay,
  "too-few-turns": tooFew,
  "too-many-turns": tooMany,
  "stopped-short": (c) => `You stopped ${grads(c.fault.size)} short of ${numberOf(c)}`,
  "ran-past": (c) => `You ran ${grads(c.fault.size)} past ${numberOf(c)}`,
  "came-back": (c) => `You ran ${grads(c.fault.size)} past ${numberOf(c)} and came back onto it`,
  "extra-turnback": (c) => `You turned back ${grads(c.fault.size)} on the way to ${numberOf(c)}`,
  "not-drawn": notDrawn,
  "paused-too-long": paused,
};

/** What a fault always does, whatever the wheels show. */
const ALWAYS: Readonly<Partial<Record<FaultCode, (c: Case) => string>>> = {
  "came-back": ({ fault, profile }) =>
    `Coming back does not bring ${profile.kind === "wheel-pack" ? `wheel ${fault.number}` : "the count"} back.`,
  "paused-too-long": () => "It forgot what was dialed.",
};

const toleranceOf = (profile: Profile, k: number) =>
  profile.kind === "wheel-pack" ? (profile.wheelPack.gateTolerance[k] ?? 0) : 0;

/** Wheels behind the one being set that the leg carried out of their gates. */
const carriedOff = ({ fault, profile, wheels }: Case): number[] =>
  wheels.after.flatMap((after, k) => {
    const tolerance = toleranceOf(profile, k);
    const wasTrue = Math.abs(wheels.before[k] ?? Infinity) <= tolerance;
    return k < fault.number - 1 && wasTrue && Math.abs(after) > tolerance ? [k] : [];
  });

const standOf = (c: Case, k: number) => `${grads(c.wheels.after[k] ?? 0)} off its gate`;

/** What a fault did to the wheels, read off the pack itself; empty where it did nothing to tell. */
const whatItDid = (c: Case): string => {
  const { fault, profile, wheels } = c;
  const own = wheels.after[fault.number - 1];
  if (own === undefined || !c.wasBegun || fault.code === "not-drawn" || fault.code === "wrong-way") return "";
  const carried = carriedOff(c).map((k) => `Wheel ${k + 1} was carried along and is ${standOf(c, k)}.`);
  const tolerance = toleranceOf(profile, fault.number - 1);
  const isTrue = Math.abs(own) <= tolerance;
  const ownStand = isTrue
    ? `Wheel ${fault.number} ${Math.abs(own) < 0.05 ? "itself is still in line" : `is ${grads(own)} off, still within its gate tolerance of ${tolerance}`}.`
    : `Wheel ${fault.number} is ${standOf(c, fault.number - 1)}.`;
  return [...carried, ownStand].join(" ");
};

const startOver = ({ profile }: Case) => {
  const first = profile.procedure[0];
  return `Start over: ${first?.turn} again, at least ${countInWords(first?.arrivals ?? 0, "arrival")}.`;
};

const isStillTrue = ({ fault, profile, wheels }: Case) =>
  wheels.after.length > 0 &&
  wheels.after.slice(0, fault.number).every((error, k) => Math.abs(error) <= toleranceOf(profile, k));

const isStopFault = ({ code }: Fault) => code === "stopped-short" || code === "ran-past" || code === "came-back";

/** Whether turning on in the same direction makes good what is wrong. */
const canBeFixed = (c: Case) => {
  if (carriedOff(c).length > 0) return false;
  if (c.fault.code === "stopped-short") return !c.isCounted || stepOf(c)?.rule === "at-least";
  if (c.fault.code === "too-few-turns") return true;
  return isStopFault(c.fault) && stepOf(c)?.rule === "at-least";
};

const fixText = (c: Case) => {
  const turn = stepOf(c)?.turn ?? "left";
  const { code } = c.fault;
  const isPast = code === "ran-past" || code === "came-back";
  return isPast ? `Do not come back: go round again, ${turn}.` : `Keep turning ${turn} to ${numberOf(c)}.`;
};

/** A fault that the lock let pass. */
const letPass = ({ fault, opened }: Case): string => {
  if (!isStopFault(fault))
    return opened ? "It still opened, but do not count on it." : "Go on, but do not count on it.";
  return opened
    ? "It still opened. A lock with closer gates would not have."
    : "Go on. With closer gates you would have to start over.";
};

const noReturn = ({ fault, profile }: Case): string => {
  if (fault.code === "wrong-way" || fault.code === "paused-too-long") return "";
  return profile.kind === "wheel-pack"
    ? "Going round again does not fix it. "
    : "The turn has ended, so it is too late to go round again. ";
};

const whatNext = (c: Case): string => {
  if (c.fault.code === "not-drawn")
    return c.wasBegun ? `Keep turning ${c.profile.draw.turn} until the dial stops.` : "Dial the other numbers first.";
  if (!c.opened && !c.wasBegun && c.fault.code === "too-few-turns")
    return `Next: turn ${stepOf(c)?.turn} to ${numberOf(c)}.`;
  if (!c.opened && c.isUnderWay && canBeFixed(c)) return fixText(c);
  // Turned the wrong way, a wheel may stand true by chance; the ones after it will not.
  const isHarmless = c.opened || (c.fault.code !== "wrong-way" && isStillTrue(c));
  return isHarmless ? letPass(c) : `${noReturn(c)}${startOver(c)}`;
};

const worded = (c: Case): WordedFault => {
  const happened = WHAT_HAPPENED[c.fault.code](c);
  const parts = [`${happened}.`, ALWAYS[c.fault.code]?.(c) ?? "", whatItDid(c), whatNext(c)];
  return { ...c.fault, happened, message: parts.filter((part) => part !== "").join(" ") };
};

/** Where the wheels stood round the leg of a number: before it, and when the next leg began (or now). */
function wheelsAround(attempt: HandledLock, number: number): WheelsAround {
  const { wheelErrors, pack } = attempt;
  const now = pack?.errors() ?? [];
  return { before: wheelErrors[number - 1] ?? now, after: wheelErrors[number] ?? now };
}

function isCounted({ reader }: HandledLock, index: number): boolean {
  const leg = reader.legs[index];
  const target = leg && reader.targetOf(leg);
  return leg !== undefined && target !== undefined && legArrivals(leg, target) >= target.step.arrivals;
}

const inWords = (attempt: HandledLock, faults: readonly Fault[]): WordedFault[] =>
  faults.map((fault) =>
    worded({
      fault,
      profile: attempt.profile,
      combination: attempt.combination,
      wheels: wheelsAround(attempt, fault.number),
      opened: attempt.opened,
      isUnderWay: attempt.reader.leg?.step === fault.number - 1,
      isCounted: isCounted(attempt, fault.number - 1),
      wasBegun: attempt.reader.legs.length >= fault.number,
    }),
  );

/** The faults that are behind the hand, worded, in dialing order. */
export function tellFaultsSoFar(attempt: HandledLock): WordedFault[] {
  return inWords(attempt, faultsSoFar(attempt));
}

/** All faults of an attempt that has ended, worded, in dialing order. */
export function tellFaults(attempt: HandledLock): WordedFault[] {
  return inWords(attempt, faultsAtEnd(attempt));
}
