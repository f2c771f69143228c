import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { DialDevice, OpenDevice } from "../../../../../src/app/hand/sources/devices/dialDevice";
import { GAMEPAD } from "../../../../../src/app/hand/sources/devices/gamepad";
import { KNOB_KEYS } from "../../../../../src/app/hand/sources/devices/knobKeys";
import { MIDI } from "../../../../../src/app/hand/sources/devices/midi";
import { StubStorage } from "../../../../support/board/stubStorage";
import { toldLink } from "../../../../support/board/toldLink";

let page = new EventTarget();
let frames: (() => void)[] = [];
let open: OpenDevice | null = null;

const frame = () => {
  const due = frames;
  frames = [];
  for (const one of due) one();
};

beforeEach(() => {
  page = new EventTarget();
  frames = [];
  vi.stubGlobal("addEventListener", page.addEventListener.bind(page));
  vi.stubGlobal("removeEventListener", page.removeEventListener.bind(page));
  vi.stubGlobal("requestAnimationFrame", (one: () => void) => frames.push(one));
  vi.stubGlobal("cancelAnimationFrame", () => {
    frames = [];
  });
  vi.stubGlobal("localStorage", new StubStorage());
});
afterEach(() => {
  open?.close();
  open = null;
  vi.unstubAllGlobals();
});

async function opened(device: DialDevice) {
  open?.close();
  const { link, told, noises } = toldLink();
  open = await device.open(link);
  return { learner: open.learner, told, noises };
}

/** Learns a knob by a turn each way. */
function learn(learner: OpenDevice["learner"], left: () => void, right: () => void) {
  learner?.begin("left");
  left();
  learner?.begin("right");
  right();
  return learner?.finish();
}

const times = (count: number, act: (k: number) => void) => {
  for (let k = 0; k < count; k++) act(k);
};

describe("a knob that presses keys", () => {
  const press = (key: string, more: object = {}) => {
    const event = Object.assign(new Event("keydown", { cancelable: true }), { key, repeat: false, ...more });
    page.dispatchEvent(event);
    return event;
  };
  const knob = [
    () => times(20, () => press("AudioVolumeDown")),
    () => times(20, () => press("AudioVolumeUp")),
  ] as const;

  test("turns the dial once it is learned, and is known the next time", async () => {
    const { learner, told } = await opened(KNOB_KEYS);
    expect(learner?.isLearned).toBe(false);
    press("AudioVolumeDown");
    expect(learn(learner, ...knob)).toBeNull();
    press("AudioVolumeDown");
    press("AudioVolumeUp");
    press("AudioVolumeUp", { repeat: true });
    expect(told).toEqual(["ready 0.05", "turned 0.05", "turned 0"]);
    expect((await opened(KNOB_KEYS)).told).toEqual(["ready 0.05"]);
  });

  test("has the noise of a place within one of its steps", async () => {
    const { learner, noises } = await opened(KNOB_KEYS);
    expect(noises).toEqual([]);
    learn(learner, ...knob);
    expect(noises.map((noise) => noise.toFixed(6))).toEqual([(0.05 / Math.sqrt(12)).toFixed(6)]);
  });

  test("leaves its keys to the page once it is let go", async () => {
    const { learner, told } = await opened(KNOB_KEYS);
    learn(learner, ...knob);
    open?.close();
    expect(press("AudioVolumeUp").defaultPrevented).toBe(false);
    page.dispatchEvent(new Event("focus"));
    expect(told).toEqual(["ready 0.05"]);
  });

  test("takes its own keys for itself, and leaves those of the page alone", async () => {
    const { learner } = await opened(KNOB_KEYS);
    expect(press("a").defaultPrevented).toBe(false);
    learner?.begin("left");
    expect(press("Tab").defaultPrevented).toBe(false);
    expect(press("a").defaultPrevented).toBe(true);
    expect(learn(learner, ...knob)).toBeNull();
    expect(press("AudioVolumeUp").defaultPrevented).toBe(true);
    expect(press("a").defaultPrevented).toBe(false);
  });

  test("says that another window had its keys", async () => {
    const { learner, told } = await opened(KNOB_KEYS);
    page.dispatchEvent(new Event("focus"));
    learn(learner, ...knob);
    page.dispatchEvent(new Event("focus"));
    expect(told).toEqual(["ready 0.05", "doubted hidden"]);
  });

  test("says why it was not learned, and goes on as it was", async () => {
    const { learner, told } = await opened(KNOB_KEYS);
    learn(learner, ...knob);
    expect(
      learn(
        learner,
        () => press("a"),
        () => press("a"),
      ),
    ).toBe("same-both-ways");
    press("AudioVolumeDown");
    expect(told.at(-1)).toBe("turned 0.05");
  });

  test("passes over what was stored and is no knob", async () => {
    for (const text of ["no json", "{}", '{"left":"a","right":"b","perTurn":0}', "null"]) {
      localStorage.setItem("dial-device-keys", text);
      expect((await opened(KNOB_KEYS)).learner?.isLearned).toBe(false);
    }
  });
});

describe("a MIDI knob", () => {
  class StubInput extends EventTarget {
    state = "connected";
    turn(value: number) {
      const data = Uint8Array.from([0xb0, 20, value]);
      this.dispatchEvent(Object.assign(new Event("midimessage"), { data }));
    }
  }
  class StubAccess extends EventTarget {
    readonly inputs = new Map<string, StubInput>();
    plug(input: StubInput, name = "one") {
      this.inputs.set(name, input);
      this.dispatchEvent(new Event("statechange"));
    }
  }
  const withMidi = (access: StubAccess) => vi.stubGlobal("navigator", { requestMIDIAccess: async () => access });

  test("turns the dial once it is learned, and says that it was unplugged", async () => {
    const access = new StubAccess();
    const input = new StubInput();
    access.inputs.set("one", input);
    withMidi(access);
    const { learner, told } = await opened(MIDI);
    const ways = [() => times(24, () => input.turn(127)), () => times(24, () => input.turn(1))] as const;
    expect(learn(learner, ...ways)).toBeNull();
    input.turn(127);
    input.turn(2);
    input.state = "disconnected";
    access.dispatchEvent(new Event("statechange"));
    expect(told).toEqual(["ready 0.041667", "turned 0.041667", "turned -0.041667", "lost unplugged"]);
  });

  test("waits for a device to be plugged in, and hears it once", async () => {
    const access = new StubAccess();
    withMidi(access);
    localStorage.setItem("dial-device-midi", '{"channel":0,"controller":20,"encoding":"twos-complement","perTurn":20}');
    const { told } = await opened(MIDI);
    const input = new StubInput();
    access.plug(input);
    access.plug(input);
    input.turn(1);
    expect(told).toEqual(["ready 0.05", "held no-inputs", "held no more", "turned 0.05"]);
  });

  test("is missed though the system has an input of its own, and is back when it is plugged in and not before", async () => {
    const access = new StubAccess();
    const [own, knob] = [new StubInput(), new StubInput()];
    access.inputs.set("system", own);
    access.inputs.set("one", knob);
    withMidi(access);
    localStorage.setItem("dial-device-midi", '{"channel":0,"controller":20,"encoding":"twos-complement","perTurn":20}');
    const { told } = await opened(MIDI);
    knob.turn(1);
    own.turn(0);
    const back = vi.fn();
    knob.state = "disconnected";
    access.dispatchEvent(new Event("statechange"));
    expect(told.at(-1)).toBe("lost unplugged");
    const stop = MIDI.whenBack?.(back);
    // It is listened for once the browser has given access anew.
    await new Promise((done) => setTimeout(done));
    access.dispatchEvent(new Event("statechange"));
    expect(back).not.toHaveBeenCalled();
    knob.state = "connected";
    access.dispatchEvent(new Event("statechange"));
    expect(back).toHaveBeenCalledTimes(1);
    stop?.();
  });

  test("may be refused, or not be there", async () => {
    vi.stubGlobal("navigator", { requestMIDIAccess: () => Promise.reject(new DOMException("no", "NotAllowedError")) });
    await expect(MIDI.open(toldLink().link)).rejects.toMatchObject({ code: "refused" });
    expect(MIDI.unsupported()).toBeNull();
    vi.stubGlobal("navigator", {});
    expect(MIDI.unsupported()?.code).toBe("no-midi");
  });
});

describe("an axis of a game controller", () => {
  let now = 0;
  let axes: number[] | null = null;
  beforeEach(() => {
    now = 1000;
    axes = null;
    vi.spyOn(performance, "now").mockImplementation(() => now);
    vi.stubGlobal("navigator", { getGamepads: () => [null, axes === null ? null : { connected: true, axes }] });
  });
  const seeAt = (place: number) => {
    axes = [0, place - 2 * Math.floor((place + 1) / 2)];
    now += 16;
    frame();
  };
  const sweep = (from: number, to: number) => () => times(41, (k) => seeAt(from + ((to - from) * k) / 40));

  test("turns the dial once it is learned, past its end too", async () => {
    axes = [0, 0];
    const { learner, told } = await opened(GAMEPAD);
    frame();
    expect(learn(learner, sweep(0, 2), sweep(2, 0))).toBeNull();
    seeAt(-0.5);
    seeAt(-1.2);
    expect(told).toEqual(["held no more", "ready 0.025", "turned -0.25", "turned -0.6"]);
  });

  test("a stick turns the dial round its rim, past its end too, and is let go of and taken again like a knob", async () => {
    const stickAt = (turns: number, reach = 1) => {
      axes = [reach * Math.cos(2 * Math.PI * turns), -reach * Math.sin(2 * Math.PI * turns), 0];
      now += 16;
      frame();
    };
    const round = (to: number) => () => times(41, (k) => stickAt((to * k) / 40));
    axes = [0, 0, 0];
    const { learner, told } = await opened(GAMEPAD);
    frame();
    expect(learn(learner, round(1), round(-1))).toBeNull();
    stickAt(0.2);
    stickAt(0.6);
    stickAt(0.6, 0.1);
    stickAt(0.1, 0.1);
    stickAt(0.1);
    stickAt(-0.1);
    expect(told).toEqual(["held no more", "ready 0.025", "turned 0.2", "turned 0.6", "turned 0.4"]);
    expect((await opened(GAMEPAD)).told).toEqual(["ready 0.025"]);
  });

  test("waits for a controller, and says that it was switched off", async () => {
    const { told } = await opened(GAMEPAD);
    frame();
    seeAt(0);
    axes = null;
    frame();
    frame();
    expect(told).toEqual(["held no-controller", "held no more", "lost switched-off"]);
  });

  test("counts nothing of what it did while the page was asleep, and says so", async () => {
    localStorage.setItem("dial-device-gamepad", '{"axis":1,"perTurn":2,"step":0.01}');
    axes = [0, 0];
    const { told } = await opened(GAMEPAD);
    seeAt(0);
    now += 5000;
    seeAt(0.5);
    seeAt(0.6);
    expect(told).toEqual(["ready 0.01", "held no more", "doubted hidden", "turned 0.05"]);
  });

  test("may not be there", () => {
    expect(GAMEPAD.unsupported()).toBeNull();
    vi.stubGlobal("navigator", {});
    expect(GAMEPAD.unsupported()?.code).toBe("no-gamepads");
  });
});
