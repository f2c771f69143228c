import type { Help } from "../../dialing/advice";
import type { HandledLock } from "../../dialing/attempt";
import { DRAG_LAG } from "../../dialing/hand/dialFeel";
import { progressOf } from "../../dialing/progress";
import { ordinalWord } from "../../dialing/words";
import type { Graduations } from "../../lock/dial";

/** The way the dial was last turned, or null before it was. */
export function lastTurn(lock: HandledLock): "left" | "right" | null {
  return lock.reader.runs.at(-1)?.turn ?? null;
}

/** What is heard of a hand beside the reading: "second arrival", "turning right". Arrivals only where the help counts them. */
export function spokenHand(lock: HandledLock, help: Help): readonly string[] {
  const { step, arrivals } = progressOf(lock);
  const made = arrivals[step] ?? 0;
  const turn = lastTurn(lock);
  return [
    ...(help !== "silent" && made > 0 ? [`${ordinalWord(made)} arrival`] : []),
    ...(turn === null ? [] : [`turning ${turn}`]),
  ];
}

/** A step that a heavy dial did not follow changes nothing to read: it is told. */
export const spokenWindUp = (windUp: Graduations): readonly string[] =>
  Math.abs(windUp) > DRAG_LAG + 0.05 ? ["the dial sticks"] : [];
