import type { Help } from "../../dialing/advice";
import type { HandledLock } from "../../dialing/attempt";
import { progressOf } from "../../dialing/progress";
import { ordinalWord, readingText } from "../../dialing/words";
import { reading } from "../../lock/dial";
import { spokenReading } from "./dial/spokenReading";

/** The reading of a lock's dial as figures. */
export function dialReadingText(lock: HandledLock): string {
  return readingText(reading(lock.dial, lock.profile.graduations), lock.profile);
}

/** The way the dial was last turned, or null before it was. */
export function lastTurn(lock: HandledLock): "left" | "right" | null {
  return lock.reader.runs.at(-1)?.turn ?? null;
}

/**
 * What a screen reader says the dial stands at: "thirty-one point two, second arrival, turning right".
 *
 * The reading is always told, as anyone can see it; arrivals only where the help counts them.
 */
export function spokenDial(lock: HandledLock, help: Help): string {
  const { step, arrivals } = progressOf(lock);
  const made = arrivals[step] ?? 0;
  const turn = lastTurn(lock);
  const parts = [spokenReading(dialReadingText(lock))];
  if (help !== "silent" && made > 0) parts.push(`${ordinalWord(made)} arrival`);
  if (turn !== null) parts.push(`turning ${turn}`);
  return parts.join(", ");
}
