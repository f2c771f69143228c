import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { DeviceHub } from "../../../../../src/app/hand/sources/devices/deviceHub";
import { deviceStateText } from "../../../../../src/app/hand/sources/devices/deviceStateText";
import { deviceProblem, deviceText } from "../../../../../src/app/hand/sources/devices/deviceWords";
import type { DeviceLink, DialDevice, KnobLearner } from "../../../../../src/app/hand/sources/devices/dialDevice";
import { dialInHand } from "../../../../support/board/dialInHand";
import { StubFrames } from "../../../../support/board/stubFrames";
import { StubLocks } from "../../../../support/board/stubLocks";
import { StubStorage } from "../../../../support/board/stubStorage";

/** A stub of a device, which tells what a test tells it to. */
function stubDevice(learner?: KnobLearner) {
  const links: DeviceLink[] = [];
  const close = vi.fn();
  const device: DialDevice = {
    kind: "midi",
    title: "Stub",
    about: "A stub.",
    unsupported: () => null,
    open: async (link) => {
      links.push(link);
      return learner === undefined ? { close } : { close, learner };
    },
  };
  const link = () => {
    const last = links.at(-1);
    if (last === undefined) throw new Error("not opened");
    return last;
  };
  return { device, close, link };
}

function hubOver(perTurn = 100) {
  const turned: number[] = [];
  const frames = new StubFrames();
  const hub = new DeviceHub({ dial: dialInHand((by) => turned.push(by), {}, perTurn) }, frames);
  return { hub, turned, frames };
}

beforeEach(() => {
  vi.stubGlobal("navigator", { locks: new StubLocks() });
  vi.stubGlobal("localStorage", new StubStorage());
});
afterEach(() => vi.unstubAllGlobals());

describe("the device in the hand", () => {
  test("tells with every move what it is, for the record", async () => {
    const named: unknown[] = [];
    const hub = new DeviceHub({ dial: dialInHand((_by, _at, source) => named.push(source)) }, new StubFrames());
    const { device, link } = stubDevice();
    await hub.connect(device);
    link().ready(0.01);
    link().turned(0.25, 20);
    link().doubted(deviceProblem("hidden", [], { device: "stub" }));
    expect(named).toEqual([{ kind: "midi", resolution: 1, noise: null, isCoarse: true }]);
  });

  test("is not heard once it is disconnected, nor after another has taken its place", async () => {
    const { hub, turned } = hubOver();
    const [one, other] = [stubDevice(), stubDevice()];
    await hub.connect(one.device);
    const old = one.link();
    old.ready(0.01);
    await hub.connect(other.device);
    old.turned(1, 10);
    old.doubted(deviceProblem("hidden", [], { device: "stub" }));
    old.lost(deviceProblem("no-sensor", []));
    expect([turned, hub.doubt, hub.trouble, hub.isConnected]).toEqual([[], null, null, true]);
    expect(one.close).toHaveBeenCalledTimes(1);
    other.link().ready(0.01);
    other.link().turned(0.25, 20);
    expect(turned).toEqual([25]);
  });

  test("says how its readings scatter, once that is measured, and where the dial on the screen is", async () => {
    const frames = new StubFrames();
    const hub = new DeviceHub({ dial: dialInHand(() => undefined, { seen: -60 }, 50) }, frames);
    const { device, link } = stubDevice();
    await hub.connect(device);
    link().ready(0.001);
    expect(hub.source?.noise).toBeNull();
    link().measured(0.002);
    expect(hub.source).toMatchObject({ resolution: 0.05, noise: 0.1 });
    expect(link().shown()).toEqual({ turns: -1.2, number: 40, perTurn: 50, keepsMoves: false });
    hub.reverse(true);
    expect(link().shown()).toEqual({ turns: 1.2, number: 40, perTurn: 50, keepsMoves: false });
  });

  test("turns the dial once a frame, by every move it has told, and before anything else is said", async () => {
    const { hub, turned, frames } = hubOver();
    const { device, link } = stubDevice();
    await hub.connect(device);
    link().ready(0.01);
    frames.isHeld = true;
    link().turned(0.25, 1);
    link().turned(0.5, 2);
    expect(turned).toEqual([]);
    frames.frame();
    expect(turned).toEqual([25, 25]);
    link().turned(0.25, 3);
    link().doubted(deviceProblem("hidden", [], { device: "stub" }));
    expect(turned).toEqual([25, 25, -25]);
    link().turned(0.5, 4);
    // Hidden before that frame is made.
    frames.hidden = true;
    link().turned(1, 5);
    expect(turned).toEqual([25, 25, -25, 25, 50]);
    frames.hidden = false;
    link().turned(0.75, 6);
    hub.disconnect();
    frames.frame();
    expect(turned).toEqual([25, 25, -25, 25, 50, -25]);
  });

  test("is learned by a turn left and a turn right, and turns no dial meanwhile", async () => {
    const done: string[] = [];
    const finish = vi.fn(() => null as "uneven" | null);
    const { hub, turned } = hubOver();
    const { device, link } = stubDevice({ isLearned: false, begin: (turn) => done.push(turn), finish });
    await hub.connect(device);
    expect(deviceStateText(hub)).toBe("not learned yet");
    hub.learnOn();
    expect(deviceStateText(hub)).toBe("turn it left by one whole turn");
    link().turned(0.5, 1);
    hub.learnOn();
    expect(deviceStateText(hub)).toBe("turn it right by one whole turn");
    finish.mockReturnValueOnce("uneven");
    hub.learnOn();
    expect(hub.trouble?.code).toBe("uneven");
    hub.learnOn();
    // What went wrong with the turns before is no trouble of these.
    expect(hub.trouble).toBeNull();
    hub.learnOn();
    hub.learnOn();
    expect([done, hub.trouble, hub.learning, turned]).toEqual([["left", "right", "left", "right"], null, null, []]);
  });

  test("is coarse where its steps are", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    await hub.connect(device);
    link().ready(1 / 24);
    expect(hub.source).toMatchObject({ kind: "midi", isCoarse: true });
    expect(deviceStateText(hub)).toBe("turns the dial, coarse: steps of 4.2 graduations");
  });

  test("says what stopped it where it could not be opened, in the browser's words", async () => {
    const { hub } = hubOver();
    const { device } = stubDevice();
    await hub.connect({ ...device, open: () => Promise.reject(new Error("it is wet")) });
    expect(hub.trouble && deviceText(hub.trouble)).toBe("Stub could not be opened: it is wet.");
    expect(deviceStateText(hub)).toBe("not connected");
  });

  test("says that it searches while it is open and has nothing to turn the dial by yet", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    await hub.connect({ ...device, waiting: "searching for the dial" });
    link().held(deviceProblem("no-sheet", []));
    expect(deviceStateText(hub)).toBe("searching for the dial");
    link().ready(0.01);
    link().held(deviceProblem("too-dark", []));
    expect(deviceStateText(hub)).toBe("not turning the dial");
  });

  test("is connected again by itself once it is back, and the turns in between are in doubt", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    let back: Parameters<NonNullable<DialDevice["whenBack"]>>[0] = () => undefined;
    const stop = vi.fn();
    const lostAndFound: DialDevice = {
      ...device,
      whenBack: (told) => {
        back = told;
        return stop;
      },
    };
    await hub.connect(lostAndFound);
    link().ready(0.01);
    link().lost(deviceProblem("unplugged", [], { device: "stub" }));
    expect([hub.isConnected, deviceStateText(hub)]).toEqual([false, "not connected"]);
    // It is still busy: it is waited for once more.
    back(() => Promise.reject(new Error("busy")));
    await vi.waitFor(() => expect(hub.trouble?.code).toBe("failed"));
    back(device.open);
    await vi.waitFor(() => expect(hub.isConnected).toBe(true));
    expect([hub.trouble, hub.doubt?.code, stop.mock.calls.length]).toEqual([null, "back", 2]);
    hub.readDoubt();
    hub.disconnect();
    await hub.connect(lostAndFound);
    expect(hub.doubt).toBeNull();
  });

  test("is not waited for where it never turned the dial", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    const whenBack = vi.fn(() => () => undefined);
    await hub.connect({ ...device, whenBack });
    link().lost(deviceProblem("not-practice", []));
    expect([whenBack.mock.calls.length, hub.isConnected, hub.trouble?.code]).toEqual([0, false, "not-practice"]);
    await hub.connect(device);
    expect(hub.doubt).toBeNull();
  });

  test("says in its source that no motion is kept, where the hand chose so", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    const opened = { close: () => undefined, keepsMotion: true };
    await hub.connect({
      ...device,
      open: async (given) => {
        await device.open(given);
        return opened;
      },
    });
    link().ready(0.01);
    expect(hub.source).not.toHaveProperty("keepsNoMotion");
    opened.keepsMotion = false;
    expect(hub.source).toMatchObject({ keepsNoMotion: true });
  });

  test("turns no dial whose record is made of every move once no motion of it is kept, though it was seen before", async () => {
    const turned: number[] = [];
    const dial = dialInHand((by) => turned.push(by));
    const hub = new DeviceHub({ dial }, new StubFrames());
    const { device, link } = stubDevice();
    await hub.connect({
      ...device,
      open: async (given) => ({ ...(await device.open(given)), keepsMotion: false }),
    });
    link().ready(0.01);
    link().turned(0.25, 20);
    dial.now.keepsMoves = true;
    link().turned(0.5, 40);
    dial.now.keepsMoves = false;
    link().turned(0.75, 60);
    expect(turned).toEqual([25, 25]);
  });

  test("is not waited for after a camera was turned off because it had no dial to turn", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    const whenBack = vi.fn(() => () => undefined);
    await hub.connect({ ...device, whenBack });
    link().ready(0.01);
    link().lost(deviceProblem("unused", []));
    expect([hub.trouble?.code, hub.isConnected, whenBack.mock.calls.length]).toEqual(["unused", false, 0]);
  });

  test("is not waited for once it is let go", async () => {
    const { hub } = hubOver();
    const { device, link } = stubDevice();
    const stop = vi.fn();
    await hub.connect({ ...device, whenBack: () => stop });
    link().ready(0.01);
    link().lost(deviceProblem("silent", []));
    expect(stop).not.toHaveBeenCalled();
    hub.disconnect();
    expect(stop).toHaveBeenCalledTimes(1);
  });

  test.each([
    ["which the browser still asks for", () => Promise.resolve()],
    ["right after it", () => undefined],
  ])("is not kept from this page by the one chosen before, %s", async (_, pause) => {
    const { hub } = hubOver();
    const [asked, other] = [stubDevice(), stubDevice()];
    let grant = () => undefined as unknown;
    const granted = new Promise((resolve) => {
      grant = () => resolve(undefined);
    });
    const first = hub.connect({ ...asked.device, open: (link) => granted.then(() => asked.device.open(link)) });
    for (let k = 0; k < 9; k++) await pause();
    await hub.connect(other.device);
    expect([hub.trouble, hub.isConnected]).toEqual([null, true]);
    grant();
    await first;
    expect([hub.isConnected, asked.close.mock.calls.length, other.close.mock.calls.length]).toEqual([true, 1, 0]);
  });

  test("can be had where the browser knows no locks", async () => {
    vi.stubGlobal("navigator", {});
    const { hub } = hubOver();
    await hub.connect(stubDevice().device);
    expect(hub.isConnected).toBe(true);
  });
});
