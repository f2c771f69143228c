import { type DialSource, listen, type TurnDial, type TurnedDial } from "./dialSource";
import { Grip } from "./grip";
import type { ScreenPoint } from "./pointerAngle";

/** On a part drawn on the dial that takes the pointer for itself, as a loose ring does. */
export const OWN_GRIP = "data-own-grip";

/**
 * Where a pointer has been since its last event. Between two frames a fast hand may turn more than half a turn: the
 * points in between tell which way.
 */
function pointsOf(event: PointerEvent): readonly PointerEvent[] {
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

const isHeldByItself = ({ target }: Event) => target instanceof Element && target.closest(`[${OWN_GRIP}]`) !== null;

/** Whether a pointer that comes down takes hold of the dial. */
const takesHold = (event: PointerEvent) =>
  !isHeldByItself(event) && (event.pointerType !== "mouse" || event.button === 0);

function start({ element, perTurn }: TurnedDial, turn: TurnDial): () => void {
  const grip = new Grip(perTurn);
  const letGo = ({ pointerId }: PointerEvent) => grip.release(pointerId);
  const loseAll = () => grip.releaseAll();
  const follow = (event: PointerEvent) => {
    if (!grip.isHeld) return;
    if (event.buttons === 0) {
      letGo(event);
      return;
    }
    grip.place(centerOf(element));
    for (const point of pointsOf(event)) turn(grip.turn(event.pointerId, point), point.timeStamp);
  };
  const end = listen(element, {
    pointerdown: (event) => {
      if (!takesHold(event)) return;
      capture(element, event.pointerId);
      grip.place(centerOf(element));
      grip.hold(event.pointerId, event);
    },
    pointermove: follow,
    pointerup: letGo,
    pointercancel: letGo,
    lostpointercapture: letGo,
  });
  addEventListener("blur", loseAll);
  return () => {
    end();
    removeEventListener("blur", loseAll);
  };
}

/**
 * Mouse, finger and pen that hold the dial.
 *
 * A release can get lost: the button comes up over another window, the system takes a touch away, the window loses the
 * focus. Then the grip ends at the next sign of it, and the dial does not follow a hand that has let go.
 */
export const POINTER: DialSource = { name: "pointer", help: [], start };
