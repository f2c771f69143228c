import { sizeText } from "../../wording/amountWords";
import { wordsOf } from "../../wording/problem";
import type { DoorLock } from "./doorLock";
import { opensAsWritten, turnThatOpens } from "./lockProbe";
import type { HandoverEvent } from "./rules/handoverEvent";
import { RUN_WORDS } from "./rules/runWords";
import { boardProblem, fitOfRun, type RunFitting } from "./runFitting";
import { NOT_LOCKED } from "./situationWords";

/** What a shut door comes to, by the lock on it. */
function shutWords(lock: DoorLock): string {
  if (lock.isHeld) return "The holdback keeps the bolt back: the door is not locked.";
  if (lock.retraction > 0) return NOT_LOCKED;
  const turn = turnThatOpens(lock);
  return turn === null
    ? "The door is locked: turning the dial on does not open it."
    : `The wheels are still in line: turning the dial ${sizeText(turn)} graduations ${lock.profile.draw.turn} opens it.`;
}

/** What the strike does to a bolt that runs into it. */
function strikeWords(fitting: RunFitting | null): readonly string[] {
  const binds = fitting !== null && (fitOfRun(fitting)?.bolt_mm ?? 0) > 0;
  return binds ? ["The bolt drags on the strike: the draw is heavy."] : [];
}

/** Why an electronic lock reads nothing. */
function boardWords(fitting: RunFitting | null): readonly string[] {
  const problem = boardProblem(fitting);
  return problem === undefined ? [] : [wordsOf(problem, RUN_WORDS)];
}

/** What a combination that has been changed comes to, dialed as it is written. */
const changedWords = (lock: DoorLock) =>
  opensAsWritten(lock) ? "Dialed as written, it opens as the ring is now." : "Dialed as written, it does not open.";

/**
 * What follows from an act by the mechanics of the lock on the door: each sentence is found by trying a copy of it.
 *
 * @param isFault - whether the act was a fault; what went well is not told
 * @param fitting - the lock as fitted in the run; null where it came on its door
 */
export function lockConsequences(
  event: HandoverEvent,
  lock: DoorLock,
  isFault: boolean,
  fitting: RunFitting | null,
): readonly string[] {
  if (event.type === "door.shut") return [shutWords(lock), ...strikeWords(fitting)];
  if (event.type === "combination.dialed" && !event.opened) return boardWords(fitting);
  if (event.type === "combination.changed" && isFault) return [changedWords(lock)];
  return [];
}
