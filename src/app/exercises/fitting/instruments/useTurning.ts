import { type PointerEvent, type RefObject, useEffect, useRef } from "react";
import type { Graduations } from "../../../../lock/dial";
import { listen } from "../../../hand/sources/dialSource";
import { KEYS } from "../../../hand/sources/keys";

/** Something that a hand turns, seen from the side. */
interface Turned {
  readonly perTurn: number;
  /** Where it stands, unwrapped graduations. */
  readonly position: () => Graduations;
  /** @param by - graduations, left positive */
  readonly turn: (by: Graduations) => void;
  readonly letGo: () => void;
}

/** How far a hand turns a dial for each pixel up: as far as its radius turns it by one radian. @param grip - as high as the dial */
const perPixel = (grip: Element, perTurn: number) => perTurn / (Math.PI * grip.getBoundingClientRect().height);

/**
 * Turns something by the bench's keys, and by a pointer that goes up and down on a grip as high as the dial: whoever looks is
 * at the operator's right, so what goes down there turns it to the right.
 *
 * @param element - takes the focus, and the keys
 * @returns what the grip hears
 */
export function useTurning(element: RefObject<HTMLElement | null>, { perTurn, position, turn, letGo }: Turned) {
  const from = useRef<number>(null);
  const hears = useRef({ position, turn, letGo });
  useEffect(() => {
    hears.current = { position, turn, letGo };
  });
  useEffect(() => {
    const { current: focused } = element;
    if (focused === null) return;
    const dial = { element: focused, perTurn, position: () => hears.current.position() };
    const end = KEYS.start(dial, (by) => hears.current.turn(by));
    // After the keys have turned on to a whole graduation.
    const drop = () => hears.current.letGo();
    const endLettingGo = listen(focused, { keyup: drop, blur: drop });
    return () => {
      end();
      endLettingGo();
    };
  }, [element, perTurn]);
  const drop = () => {
    from.current = null;
    letGo();
  };
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button !== 0) return;
      from.current = event.clientY;
      event.currentTarget.setPointerCapture(event.pointerId);
    },
    onPointerMove: (event: PointerEvent) => {
      if (from.current === null) return;
      const up = from.current - event.clientY;
      from.current = event.clientY;
      turn(up * perPixel(event.currentTarget, perTurn));
    },
    onPointerUp: drop,
    onPointerCancel: drop,
  };
}
