import type { Milliseconds } from "../../../lock/dial";
import { type DialSource, listen, type TurnDial, type TurnedDial } from "./dialSource";
import { HOLD_AFTER, type KeyTurn, keyTurn } from "./turningKeys";

/** A key that is down, and the turning it does. */
interface HeldKey {
  readonly key: string;
  readonly speed: number;
  readonly since: Milliseconds;
  last: Milliseconds;
}

const hasModifier = (event: KeyboardEvent) => event.altKey || event.ctrlKey || event.metaKey;

function start({ element, perTurn, position }: TurnedDial, turn: TurnDial): () => void {
  let held: HeldKey | null = null;
  let frame = 0;

  /** Turns on to the next whole graduation, so that steps after a held key reach every number. */
  const settle = (speed: number, now: Milliseconds) => {
    const at = position();
    turn((speed > 0 ? Math.ceil(at) : Math.floor(at)) - at, now);
  };
  const stop = () => {
    cancelAnimationFrame(frame);
    held = null;
  };
  const letGo = () => {
    const was = held;
    stop();
    const now = performance.now();
    if (was !== null && now - was.since > HOLD_AFTER) settle(was.speed, now);
  };
  const follow = () => {
    if (held === null) return;
    const now = performance.now();
    if (now - held.since > HOLD_AFTER) turn((held.speed * (now - held.last)) / 1000, now);
    held.last = now;
    frame = requestAnimationFrame(follow);
  };
  const press = (key: string, { step, speed }: KeyTurn) => {
    letGo();
    const now = performance.now();
    turn(step, now);
    if (speed === 0) return;
    held = { key, speed, since: now, last: now };
    frame = requestAnimationFrame(follow);
  };

  const end = listen(element, {
    keydown: (event) => {
      const found = hasModifier(event) ? null : keyTurn(event, perTurn);
      if (found === null) return;
      event.preventDefault();
      // The system repeats a held key; turning keys go at their own speed instead.
      if (!event.repeat) press(event.key, found);
      else if (found.speed === 0) turn(found.step, performance.now());
    },
    keyup: ({ key }) => key === held?.key && letGo(),
    blur: letGo,
  });
  return () => {
    end();
    stop();
  };
}

/** Keys that turn the dial: a step at once, and steady turning while held. */
export const KEYS = {
  name: "keys",
  help: [
    "Arrow keys turn the dial the way they point, by 1 graduation. Hold one down to keep turning; with Shift it turns fast.",
    "Comma and period turn by 0.1.",
    "Page Up and Page Down turn by 10; with Shift by one whole turn.",
  ],
  start,
} satisfies DialSource;
