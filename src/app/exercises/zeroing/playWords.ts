import type { Turn } from "../../../lock/dial";
import { type PlayContext, type PlayProblem, STOPS_WANTED } from "../../../zeroing/playMachine";

export const TITLE = "Find the play";
export const ABOUT = "how far the dial turns before the cam follows";
export const SAY = "Stop on the cam's mark from each side.";
export const HOW = `Turn right until the cam's mark has just come to its line, and record the stop. Turn left until the mark comes to the same line, and record that stop too. The cam is in the same place both times; the dial is not. Record at least ${STOPS_WANTED} stops each way, then enter how large the play is.`;

/** How a stop of a dial in the hand is judged. */
export const OWN_DIAL =
  "Your own dial moves the cam. Stop where the cam’s mark in the window has just come to its line. What your dial shows is not judged. A rest counts again once you have turned away by more than 1 graduation.";

const PROBLEMS: Readonly<Record<PlayProblem, (turn: Turn) => string>> = {
  "recorded-already": () => "This stop is recorded already. Turn away and come onto the line again.",
  "still-moving": () => "The dial is still moving. Let it come to rest, then record the stop.",
  "cam-waits": (turn) => `The cam has not moved yet: turn ${turn} until it does.`,
  "off-the-line": () => "The cam's mark is not on its line.",
};

/** Why the last stop was not kept; nothing where it was. */
export const problemWords = ({ problem, turn }: PlayContext): string =>
  problem === null || turn === null ? "" : PROBLEMS[problem](turn);
