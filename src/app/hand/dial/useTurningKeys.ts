import { type KeyboardEvent, useEffect, useRef } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import { HOLD_AFTER, type KeyTurn, keyTurn } from "./turningKeys";

/** A key that is down, and the turning it does. */
interface HeldKey {
  readonly key: string;
  readonly speed: number;
  readonly since: Milliseconds;
  last: Milliseconds;
}

type Turned = (by: Graduations, at: Milliseconds) => void;

const hasModifier = (event: KeyboardEvent) => event.altKey || event.ctrlKey || event.metaKey;

/** Keys that turn the dial: a step at once, and steady turning while held. */
export function useTurningKeys(position: Graduations, perTurn: number, onTurn: Turned) {
  const held = useRef<HeldKey | null>(null);
  const frame = useRef(0);

  const at = useRef(position);
  at.current = position;

  const letGo = () => {
    const { current } = held;
    held.current = null;
    cancelAnimationFrame(frame.current);
    const now = performance.now();
    if (current !== null && now - current.since > HOLD_AFTER) settle(current.speed, now);
  };
  /** Turns on to the next whole graduation, so that steps after a held key reach every number. */
  const settle = (speed: number, now: Milliseconds) => {
    const rest = (speed > 0 ? Math.ceil(at.current) : Math.floor(at.current)) - at.current;
    if (rest !== 0) onTurn(rest, now);
  };
  useEffect(() => () => cancelAnimationFrame(frame.current), []);

  const follow = () => {
    const now = performance.now();
    const key = held.current;
    if (key === null) return;
    if (now - key.since > HOLD_AFTER) onTurn((key.speed * (now - key.last)) / 1000, now);
    key.last = now;
    frame.current = requestAnimationFrame(follow);
  };

  const press = (key: string, turn: KeyTurn) => {
    letGo();
    const now = performance.now();
    onTurn(turn.step, now);
    if (turn.speed === 0) return;
    held.current = { key, speed: turn.speed, since: now, last: now };
    frame.current = requestAnimationFrame(follow);
  };

  const onKeyDown = (event: KeyboardEvent): boolean => {
    const turn = hasModifier(event) ? null : keyTurn(event, perTurn);
    if (turn === null) return false;
    event.preventDefault();
    // The system repeats a held key; turning keys go at their own speed instead.
    if (!event.repeat) press(event.key, turn);
    else if (turn.speed === 0) onTurn(turn.step, performance.now());
    return true;
  };

  return { onKeyDown, onKeyUp: (event: KeyboardEvent) => event.key === held.current?.key && letGo(), letGo };
}
