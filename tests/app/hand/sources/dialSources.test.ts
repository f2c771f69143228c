import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { DIAL_SOURCES } from "../../../../src/app/hand/sources/dialSources";
import { dialInHand } from "../../../support/board/dialInHand";

/** An element as far as a source knows one. */
class StandIn extends EventTarget {
  readonly isOnRing: boolean;
  constructor(isOnRing = false) {
    super();
    this.isOnRing = isOnRing;
  }
  getBoundingClientRect = () => ({ left: 0, top: 0, width: 400, height: 400 });
  setPointerCapture = () => undefined;
  closest = () => (this.isOnRing ? this : null);
}

const event = (type: string, values: object) => Object.assign(new Event(type, { cancelable: true }), values);

/** What a pointer at so many graduations left of straight up looks like, 100 pixels from the middle. */
const pointer = (turned: number) => {
  const angle = (turned / 100) * 2 * Math.PI;
  const clientX = 200 - 100 * Math.sin(angle);
  const clientY = 200 - 100 * Math.cos(angle);
  return { pointerId: 1, pointerType: "mouse", button: 0, buttons: 1, clientX, clientY };
};

/** A dial with every source at work, and what they bring. */
function sourcedDial(element = new StandIn()) {
  const turn = vi.fn();
  let position = 0;
  const dial = {
    element: element as unknown as HTMLElement,
    position: () => position,
    ...dialInHand(turn),
  };
  const ends = DIAL_SOURCES.map(({ start }) => start?.(dial, turn));
  const send = (type: string, values: object) => {
    const sent = event(type, values);
    element.dispatchEvent(sent);
    return sent;
  };
  return {
    send,
    turned: () => turn.mock.calls.map(([by]) => by as number),
    standAt: (at: number) => {
      position = at;
    },
    end: () => {
      for (const end of ends) end?.();
    },
  };
}

let frames: (() => void)[] = [];
let now = 0;
const frame = () => {
  const due = frames;
  frames = [];
  for (const one of due) one();
};

beforeEach(() => {
  frames = [];
  now = 1000;
  vi.stubGlobal("Element", StandIn);
  vi.stubGlobal("document", { activeElement: null });
  vi.stubGlobal("addEventListener", () => undefined);
  vi.stubGlobal("removeEventListener", () => undefined);
  vi.stubGlobal("requestAnimationFrame", (one: () => void) => frames.push(one));
  vi.stubGlobal("cancelAnimationFrame", () => {
    frames = [];
  });
  vi.spyOn(performance, "now").mockImplementation(() => now);
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.restoreAllMocks();
});

describe("the sources of a dial", () => {
  test("a pointer turns it by the angle it goes round the middle, until its button is up", () => {
    const { send, turned } = sourcedDial();
    send("pointerdown", pointer(0));
    send("pointermove", pointer(5));
    send("pointermove", pointer(2));
    send("pointermove", { ...pointer(20), buttons: 0 });
    send("pointermove", pointer(30));
    expect(turned().map((by) => Number(by.toFixed(6)))).toEqual([5, -3]);
  });

  test("a part of it that has a grip of its own, and another button of the mouse, do not turn it", () => {
    const ring = sourcedDial(new StandIn(true));
    ring.send("pointerdown", pointer(0));
    ring.send("pointermove", pointer(5));
    expect(ring.turned()).toEqual([]);
    const other = sourcedDial();
    other.send("pointerdown", { ...pointer(0), button: 2 });
    other.send("pointermove", pointer(5));
    expect(other.turned()).toEqual([]);
  });

  test("a key steps at once; held down it turns on, and comes to a whole graduation as it is let go", () => {
    const { send, turned, standAt } = sourcedDial();
    const sent = send("keydown", { key: "ArrowLeft" });
    expect(sent.defaultPrevented).toBe(true);
    now += 500;
    frame();
    standAt(10.4);
    send("keyup", { key: "ArrowLeft" });
    expect(turned()).toEqual([1, 9, expect.closeTo(0.6)]);
    send("keydown", { key: "ArrowLeft", ctrlKey: true });
    send("keydown", { key: "x" });
    expect(turned()).toHaveLength(3);
  });

  test("a wheel turns a dial that has the focus, and scrolls the page else", () => {
    const element = new StandIn();
    const { send, turned } = sourcedDial(element);
    const wheel = { deltaX: 0, deltaY: 100, deltaMode: 0, shiftKey: false, ctrlKey: false };
    expect(send("wheel", wheel).defaultPrevented).toBe(false);
    vi.stubGlobal("document", { activeElement: element });
    expect(send("wheel", wheel).defaultPrevented).toBe(true);
    send("wheel", { ...wheel, ctrlKey: true });
    expect(turned()).toEqual([-3]);
  });

  test("none of them turns it once they have ended, not even a key that is still down", () => {
    const { send, turned, end } = sourcedDial();
    send("keydown", { key: "ArrowLeft" });
    send("pointerdown", pointer(0));
    end();
    now += 900;
    frame();
    send("pointermove", pointer(5));
    send("keydown", { key: "PageUp" });
    expect(turned()).toEqual([1]);
  });
});
