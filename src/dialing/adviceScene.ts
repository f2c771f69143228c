import type { Turn } from "../lock/dial";
import type { Profile } from "../lock/profile";
import { countInWords, countOrNone, countWord } from "../wording/amountWords";
import type { HandledLock } from "./attempt";
import type { Progress } from "./progress";
import { faceText } from "./words";

/** One sentence to act on, and one of detail. */
export interface Advice {
  /** Which way to turn now, or null to rest. */
  readonly turn: Turn | null;
  readonly say: string;
  /** The same to be heard, where it differs: without sizes, so that it changes only when something new is to be done. */
  readonly aloud?: string;
  readonly detail: string;
}

/** An advice to be heard; nothing where nothing is to be told. */
export const heardAdvice = (advice: Advice | null): string => advice?.aloud ?? advice?.say ?? "";

/** A lock under a hand, and where the hand is in the procedure. */
export interface Scene {
  readonly attempt: HandledLock;
  readonly profile: Profile;
  readonly progress: Progress;
}

/** Which way to turn at the step under way. */
export const turnFor = ({ profile, progress }: Scene): Turn =>
  profile.procedure[progress.step]?.turn ?? profile.draw.turn;

/** The number under way, as the face shows it. */
export const numberText = ({ attempt, profile, progress }: Scene) =>
  faceText(attempt.combination[progress.step] ?? 0, profile);

/** Arrivals that the number under way asks for. */
export const wanted = ({ profile, progress }: Scene) => profile.procedure[progress.step]?.arrivals ?? 0;

/** Arrivals made at it so far. */
export const made = ({ progress }: Scene) => progress.arrivals[progress.step] ?? 0;

/** How one starts over: "turn left, at least four arrivals at 38". */
export const startOverText = ({ profile, attempt }: Scene) => {
  const first = profile.procedure[0];
  const number = faceText(attempt.combination[0] ?? 0, profile);
  return `turn ${first?.turn}, at least ${countInWords(first?.arrivals ?? 0, "arrival")} at ${number}`;
};

/** "two of three arrivals made". */
export const countsText = (scene: Scene) => `${countOrNone(made(scene))} of ${countWord(wanted(scene))} arrivals made`;
