import { opposite } from "../lock/dial";
import { countWord, sizeText, timesWord, wheelsText } from "../wording/amountWords";
import { type Advice, countsText, made, numberText, type Scene, startOverText, turnFor, wanted } from "./adviceScene";
import type { HandledLock } from "./attempt";
import type { DialingState } from "./dialingMachine";
import { faultsSoFar } from "./fault";
import { tellFaults } from "./faultWords";
import { startedOver } from "./freshReading";
import { progressOf } from "./progress";
import { distanceTo, runLength } from "./runs";
import { spinningOff } from "./spinOffAdvice";
import { capital, faceText, ordinalWord } from "./words";

export { type Advice, heardAdvice } from "./adviceScene";

/** How much the trainer says while one dials. */
export type Help = "full" | "counts" | "silent";

const turning = (scene: Scene): Advice => {
  const left = wanted(scene) - made(scene);
  const next =
    left <= 1
      ? `Next arrival at ${numberText(scene)} is your stop.`
      : `Pass ${numberText(scene)} ${timesWord(left - 1)}, then stop on it.`;
  return {
    turn: turnFor(scene),
    say: `Keep turning ${turnFor(scene)}. ${next}`,
    detail: `${sizeText(scene.progress.toGo ?? 0)} graduations to go · ${countsText(scene)}`,
  };
};

const resting = (scene: Scene): Advice => {
  const back = opposite(turnFor(scene));
  const following = scene.attempt.combination[scene.progress.step + 1];
  const next =
    following === undefined ? `turn ${back} to the stop` : `turn ${back} to ${faceText(following, scene.profile)}`;
  return { turn: back, say: `Stop here. Now ${next}.`, detail: `on ${numberText(scene)} · ${countsText(scene)}` };
};

/** Wheels that one arrival too many has carried out of their gates: "it carried wheel 1 along". */
const carriedText = ({ attempt, profile, progress }: Scene): string => {
  if (attempt.pack === null || profile.kind !== "wheel-pack") return "";
  const { gateTolerance } = profile.wheelPack;
  const off = attempt.pack.errors().flatMap((error, k) => (Math.abs(error) > (gateTolerance[k] ?? 0) ? [k + 1] : []));
  const carried = off.filter((wheel) => wheel <= progress.step);
  return carried.length === 0 ? "" : `: it carried ${wheelsText(carried)} along`;
};

/** Past a number by whole arrivals, where the lock asks for an exact count: which arrival it was, and what it did. */
const oneTooMany = (scene: Scene): Advice => {
  const arrival = ordinalWord(made(scene));
  return {
    turn: scene.profile.procedure[0]?.turn ?? null,
    say: `${capital(arrival)} arrival at ${numberText(scene)}${carriedText(scene)}. Start over: ${startOverText(scene)}.`,
    detail: `this lock asks for exactly ${countWord(wanted(scene))} arrivals at ${numberText(scene)}`,
  };
};

const overrun = (scene: Scene): Advice => {
  const isExact = scene.profile.procedure[scene.progress.step]?.rule === "exactly";
  return isExact && made(scene) > wanted(scene) ? oneTooMany(scene) : ranPast(scene);
};

/** A sentence with a size in it, and the same to be heard: a size changes with every graduation. */
const sized = (shown: string, heard: string, rest: string) => ({ say: `${shown}${rest}`, aloud: `${heard}${rest}` });

const ranPast = (scene: Scene): Advice => {
  const { attempt, profile, progress } = scene;
  const step = profile.procedure[progress.step];
  const leg = attempt.reader.leg;
  const past =
    leg === undefined
      ? 0
      : profile.graduations -
        distanceTo(attempt.combination[progress.step] ?? 0, leg.to, leg.turn, profile.graduations);
  const mayGoRound = step?.rule === "at-least";
  const stand = attempt.pack?.errors()[progress.step] ?? 0;
  const detail =
    attempt.pack === null
      ? "on this lock you may go round again"
      : `wheel ${progress.step + 1} is now ${sizeText(stand)} graduations off its gate`;
  const pastIt = (next: string) => sized(`${sizeText(past)} past`, "Past", ` ${numberText(scene)}. ${next}.`);
  return mayGoRound
    ? {
        turn: step.turn,
        ...pastIt(`Do not come back: go round again, ${step.turn}`),
        detail: `the ${ordinalWord(made(scene) + 1)} arrival at ${numberText(scene)} is as good`,
      }
    : {
        turn: profile.procedure[0]?.turn ?? null,
        ...pastIt(`Start over: ${startOverText(scene)}`),
        detail,
      };
};

const drawing = (scene: Scene): Advice => ({
  turn: scene.profile.draw.turn,
  say: `Turn ${scene.profile.draw.turn}, gently, until the dial stops.`,
  detail: scene.attempt.isCoupled
    ? "the bolt is coming back"
    : `${sizeText(scene.progress.toGo ?? 0)} graduations to the stop`,
});

const wrongWay = (scene: Scene): Advice => ({
  turn: scene.profile.procedure[0]?.turn ?? null,
  say: `Other way: ${startOverText(scene)}.`,
  detail: "the attempt begins with your first turn that way",
});

const failed = (scene: Scene): Advice => ({
  turn: scene.profile.procedure[0]?.turn ?? null,
  say: `It did not open. Start over: ${startOverText(scene)}.`,
  detail: tellFaults(scene.attempt)[0]?.happened ?? "",
});

const CAN_BE_SPOILED: readonly DialingState[] = ["turning", "resting", "drawing"];

/** What is wrong with a number that is behind the hand, so that the lock can no longer open; null while it can. */
const whatIsSpoiled = ({ attempt, profile, progress }: Scene): string | null => {
  if (attempt.pack === null || profile.kind !== "wheel-pack") {
    const isOff = faultsSoFar(attempt).some(({ code }) => code !== "paused-too-long");
    // An encoder takes every turnback for another run.
    const hasTurnedBack = attempt.reader.legs.some((leg) => leg.turnbacks.length > 0);
    return isOff || hasTurnedBack ? "this entry is wrong" : null;
  }
  const errors = attempt.pack.errors();
  const wheel = errors.findIndex(
    (error, k) => k < progress.step && Math.abs(error) > (profile.wheelPack.gateTolerance[k] ?? 0),
  );
  return wheel < 0 ? null : `wheel ${wheel + 1} is ${sizeText(errors[wheel] ?? 0)} graduations off its gate`;
};

/** Whether the hand has turned back before it came to its number, and may only be hesitating. */
const isTurningBack = ({ reader }: HandledLock) => reader.isHesitating && reader.legs.at(-2)?.place === "before";

const turnedBack = ({ attempt, profile }: Scene): Advice => {
  const { legs } = attempt.reader;
  const leg = legs.at(-1);
  const before = legs.at(-2);
  const number = faceText(attempt.combination[before?.step ?? 0] ?? 0, profile);
  const by = leg === undefined ? 0 : runLength(leg);
  return {
    turn: before?.turn ?? null,
    ...sized(
      `You turned back ${sizeText(by)} graduations`,
      "You turned back",
      ` on the way to ${number}. Turn ${before?.turn} again.`,
    ),
    detail: "a short turnback moves no wheel that is set; keep one direction all the way",
  };
};

/** What to do on the way of a new start, once an encoder lock's entry is wrong. */
const startingOver = ({ attempt, profile }: Scene, what: string): Advice | null => {
  const reader = attempt.pack === null ? startedOver(attempt.reader) : null;
  if (reader === null) return null;
  const progress = progressOf({ profile, reader, combination: attempt.combination, dial: attempt.dial });
  const scene: Scene = { attempt, profile, progress };
  const advice = reader.leg?.place === "at" ? resting(scene) : turning(scene);
  return { ...advice, detail: `${what}: start over · ${countsText(scene)}` };
};

const spoiled = (scene: Scene): Advice | null => {
  const what = whatIsSpoiled(scene);
  const again = what === null ? null : startingOver(scene, what);
  if (again !== null) return again;
  const turn = scene.profile.procedure[0]?.turn ?? null;
  return what === null ? null : { turn, say: `This will not open. Start over: ${startOverText(scene)}.`, detail: what };
};

const WORDS: Readonly<Record<DialingState, (scene: Scene) => Advice>> = {
  waiting: (scene) => ({
    turn: scene.profile.procedure[0]?.turn ?? null,
    say: `Start: ${startOverText(scene)}.`,
    detail: "an arrival: the number comes under the opening index",
  }),
  wrongWay,
  turning,
  resting,
  overrun,
  drawing,
  failed,
  open: (scene) => ({
    turn: opposite(scene.profile.draw.turn),
    say: `Open. Turn ${opposite(scene.profile.draw.turn)} to throw the bolt, then spin off.`,
    detail: "the dial is at the positive stop",
  }),
  thrown: spinningOff,
  secured: () => ({ turn: null, say: "Secured.", detail: "turn the dial to start again" }),
};

/**
 * What to tell the hand now.
 *
 * @param state - what the dialing chart says the operator is doing
 * @param help - `full` tells what to do and how far; `counts` only which number and how many arrivals; `silent` nothing
 * @returns null where nothing is to be told
 */
export function adviceFor(attempt: HandledLock, state: DialingState, help: Help): Advice | null {
  if (help === "silent") return null;
  const scene: Scene = { attempt, profile: attempt.profile, progress: progressOf(attempt) };
  if (help === "counts") return countsOnly(scene, state);
  if (attempt.pack !== null && isTurningBack(attempt)) return turnedBack(scene);
  return (CAN_BE_SPOILED.includes(state) ? spoiled(scene) : null) ?? WORDS[state](scene);
}

const countsOnly = (scene: Scene, state: DialingState): Advice | null => {
  const { procedure } = scene.profile;
  const isCounting = COUNTED.includes(state);
  if (!isCounting || scene.progress.step >= procedure.length) return null;
  const number = scene.progress.step + 1;
  const needed = countWord(wanted(scene));
  const say =
    made(scene) === 0
      ? `No arrival yet at number ${number}. ${capital(needed)} needed.`
      : `${capital(countWord(made(scene)))} of ${needed} at number ${number}.`;
  return { turn: null, say, detail: "" };
};

const COUNTED: readonly DialingState[] = ["waiting", "wrongWay", "turning", "resting", "overrun"];
