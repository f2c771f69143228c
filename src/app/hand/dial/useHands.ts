import { type PointerEvent, useEffect, useMemo } from "react";
import type { Graduations, Milliseconds } from "../../../lock/dial";
import { Grip } from "./grip";
import type { ScreenPoint } from "./pointerAngle";

type Turned = (by: Graduations, at: Milliseconds) => void;

/**
 * Where a pointer has been since its last event. Between two frames a fast hand may turn more than half a turn: the
 * points in between tell which way.
 */
function pointsOf(event: globalThis.PointerEvent): readonly globalThis.PointerEvent[] {
  const points = event.getCoalescedEvents?.() ?? [];
  return points.length > 0 ? points : [event];
}

function centerOf(element: Element): ScreenPoint {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { clientX: left + width / 2, clientY: top + height / 2 };
}

/** Takes the pointer for the dial; a pointer that is already gone cannot be taken, and then its moves just end. */
function capture(element: Element, pointerId: number): void {
  try {
    element.setPointerCapture(pointerId);
  } catch {
    // The browser has lost the pointer meanwhile: the move without a button ends the grip.
  }
}

/**
 * Pointers, touches and pens that hold the dial.
 *
 * A release can get lost: the button comes up over another window, the system takes a touch away, the window loses the
 * focus. Then the grip ends at the next sign of it, and the dial does not follow a hand that has let go.
 */
export function useHands(graduations: number, onTurn: Turned) {
  const grip = useMemo(() => new Grip(graduations), [graduations]);
  useEffect(() => {
    const loseAll = () => grip.releaseAll();
    addEventListener("blur", loseAll);
    return () => removeEventListener("blur", loseAll);
  }, [grip]);
  const letGo = (event: PointerEvent) => grip.release(event.pointerId);
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.pointerType === "mouse" && event.button !== 0) return;
      capture(event.currentTarget, event.pointerId);
      grip.place(centerOf(event.currentTarget));
      grip.hold(event.pointerId, event);
    },
    onPointerMove: (event: PointerEvent) => {
      if (!grip.isHeld) return;
      if (event.buttons === 0) {
        letGo(event);
        return;
      }
      grip.place(centerOf(event.currentTarget));
      for (const point of pointsOf(event.nativeEvent)) {
        const by = grip.turn(event.pointerId, point);
        if (by !== 0) onTurn(by, point.timeStamp);
      }
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onLostPointerCapture: letGo,
  };
}
