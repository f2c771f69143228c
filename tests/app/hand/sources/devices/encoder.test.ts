import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { DialInHand } from "../../../../../src/app/hand/sources/deviceSlot";
import { DeviceHub } from "../../../../../src/app/hand/sources/devices/deviceHub";
import { deviceStateText } from "../../../../../src/app/hand/sources/devices/deviceStateText";
import { deviceText } from "../../../../../src/app/hand/sources/devices/deviceWords";
import { ENCODER } from "../../../../../src/app/hand/sources/devices/encoder";
import { dialInHand } from "../../../../support/board/dialInHand";
import { StubFrames } from "../../../../support/board/stubFrames";
import { StubLocks } from "../../../../support/board/stubLocks";
import { StubSerialPort } from "../../../../support/board/stubSerialPort";
import { StubStorage } from "../../../../support/board/stubStorage";
import { withChecksum } from "../../../../support/board/writeWireLine";

const said = (text: string) => `${withChecksum(text)}\n`;
const HELLO = said("h 0 0 0 1 0 2400 1");

/** A page with one dial on it, and a stub of a port to choose. */
function page(perTurn = 100) {
  const port = new StubSerialPort();
  const requestPort = vi.fn(async () => port);
  const serial = Object.assign(new EventTarget(), { requestPort });
  vi.stubGlobal("navigator", { serial, locks });
  const turned: number[] = [];
  const dials: { dial: DialInHand | undefined } = {
    dial: dialInHand((by) => turned.push(Math.round(by * 1e6) / 1e6), {}, perTurn),
  };
  const hub = new DeviceHub(dials, new StubFrames());
  hubs.push(hub);
  return { port, requestPort, serial, hub, dials, turned };
}

/** A page whose encoder has said its hello. */
async function connected(perTurn = 100) {
  const made = page(perTurn);
  await made.hub.connect(ENCODER);
  await made.port.say(HELLO);
  return made;
}

let locks = new StubLocks();
let hubs: DeviceHub[] = [];

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("localStorage", new StubStorage());
  locks = new StubLocks();
  hubs = [];
});
afterEach(() => {
  for (const hub of hubs) hub.disconnect();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("an encoder on a serial line", () => {
  test("turns the dial from its hello on, and says how fine it is", async () => {
    const { port, hub, turned } = page();
    await hub.connect(ENCODER);
    expect(deviceStateText(hub)).toBe("waiting for it to answer");
    await port.say(said("p 1 500 8 1 0"));
    expect(turned).toEqual([]);
    await port.say(HELLO);
    await port.say(said("p 1 24 8 1 0") + said("p 2 -24 16 1 0"));
    expect(turned).toEqual([1, -2]);
    expect(hub.source).toEqual({
      kind: "encoder",
      resolution: expect.closeTo(100 / 2400, 12),
      // Anywhere within a step, while nothing has flickered: step / sqrt(12).
      noise: expect.closeTo(100 / 2400 / Math.sqrt(12), 12),
      isCoarse: false,
    });
    expect(deviceStateText(hub)).toBe("turns the dial in steps of 0.04 graduations");
  });

  test("asks the board until it answers", async () => {
    const { port, hub } = page();
    await hub.connect(ENCODER);
    vi.advanceTimersByTime(700);
    await port.settled();
    expect(port.written).toEqual(["?", "?", "?"]);
    await port.say(HELLO);
    vi.advanceTimersByTime(900);
    await port.settled();
    expect(port.written).toHaveLength(3);
  });

  test("turns each dial by that dial's own turn, and the next one from where it is", async () => {
    const { port, dials, turned } = await connected();
    await port.say(said("p 1 240 8 1 0"));
    dials.dial = dialInHand((by) => turned.push(by), {}, 60);
    await port.say(said("p 2 480 16 1 0"));
    dials.dial = undefined;
    await port.say(said("p 3 4800 24 1 0"));
    dials.dial = dialInHand((by) => turned.push(by), {}, 60);
    await port.say(said("p 4 4840 32 1 0"));
    expect(turned).toEqual([10, 6, 1]);
  });

  test("turns the other way when it is told so", async () => {
    const { port, hub, turned } = await connected();
    await port.say(said("p 1 24 8 1 0"));
    hub.reverse(true);
    await port.say(said("p 2 48 16 1 0"));
    expect(turned).toEqual([1, -1]);
  });

  test("lets the dial rest where the encoder flickers on the edge of a step", async () => {
    const { port, turned } = await connected();
    for (const [k, count] of [24, 23, 24, 23, 24].entries())
      await port.say(said(`p ${k + 1} ${count} ${8 * k + 8} 1 0`));
    expect(turned).toEqual([1]);
  });

  test("is as fine as the dial on the screen makes it", async () => {
    const { hub, dials } = await connected();
    dials.dial = dialInHand(() => undefined, {}, 60);
    expect(hub.source?.resolution).toBeCloseTo(60 / 2400, 12);
  });

  test("tells a press of its button", async () => {
    const { port, hub } = await connected();
    const pressed = vi.spyOn(hub.watch, "pressed");
    await port.say(said("b 1 0 8 1 0"));
    expect(pressed).toHaveBeenCalledTimes(1);
  });

  test.each([
    {
      why: "the board starts anew",
      lines: [said("h 0 0 0 2 0 2400 1"), said("p 1 24 8 2 0")],
      turned: [1, 1],
      says: "The board restarted. What you turned meanwhile is not counted: dial from the start.",
    },
    {
      why: "steps are missed",
      lines: [said("p 2 48 16 1 2")],
      turned: [1, 1],
      says: "2 steps of the encoder could not be read, so the dial may be off. Turn slower, check its wires, and dial from the start.",
    },
    {
      why: "it counts more than a hand can turn",
      lines: [said("p 2 2000000024 16 1 0"), said("p 3 2000000048 24 1 0")],
      turned: [1, 1],
      says: "The board counted 2000000000 steps at once, more than a hand can turn, so they were left out. Check its wires, and dial from the start.",
    },
    {
      why: "nothing was heard while it turned",
      lines: [said("p 90 48 720 1 0")],
      turned: [1, 1],
      says: "Nothing was heard of the encoder for 0.7 s while it turned. If you turned back meanwhile, dial from the start.",
    },
  ])("goes on and says so where $why", async ({ lines, turned, says }) => {
    const made = await connected();
    await made.port.say(said("p 1 24 8 1 0"));
    for (const line of lines) await made.port.say(line);
    expect(made.turned).toEqual(turned);
    expect(made.hub.doubt && deviceText(made.hub.doubt)).toBe(says);
    made.hub.readDoubt();
    expect(made.hub.doubt).toBeNull();
  });

  test("goes on after an error of the line", async () => {
    const { port, turned, hub } = await connected();
    await port.stumble();
    await port.say(said("p 1 24 8 1 0"));
    expect(turned).toEqual([1]);
    expect(hub.trouble).toBeNull();
  });

  test("is lost where an error of the line leaves the same stream", async () => {
    const { port, hub } = await connected();
    const { readable } = port;
    let looks = 0;
    // Without an end to it the page would hang, and so would this test.
    Object.defineProperty(port, "readable", { get: () => (looks++ < 1000 ? readable : null) });
    await port.fail();
    await vi.waitFor(() => expect(hub.trouble?.code).toBe("unplugged"));
    expect(looks).toBeLessThan(9);
  });

  test("says that no board answers, and takes it back when one does", async () => {
    const { port, hub } = page();
    await hub.connect(ENCODER);
    vi.advanceTimersByTime(5000);
    expect(hub.trouble?.code).toBe("no-hello");
    await port.say(HELLO);
    expect(hub.trouble).toBeNull();
    vi.advanceTimersByTime(3000);
    expect(hub.trouble?.code).toBe("silent");
    await port.say(said("p 1 0 250 1 0"));
    expect(hub.trouble).toBeNull();
  });

  test("says that the board's program is newer than the page", async () => {
    const { port, hub } = page();
    await hub.connect(ENCODER);
    await port.say(said("h 0 0 0 1 0 2400 2"));
    expect(hub.trouble && deviceText(hub.trouble)).toContain("version 2");
    expect(hub.source).toBeNull();
  });

  test("says that it was unplugged, and lets go of the page's hold", async () => {
    const { port, hub, turned } = await connected();
    await port.pull();
    expect(hub.trouble && deviceText(hub.trouble)).toBe(
      "The encoder was unplugged. Plug it in again. If it does not connect by itself, connect it. Then dial from the start.",
    );
    expect([hub.isConnected, locks.held, turned]).toEqual([false, 0, []]);
  });

  test("plugged in again it turns the dial by itself, and says that turns may be missing", async () => {
    const { port, serial, hub, turned, requestPort } = await connected();
    await port.pull();
    const pluggedIn = Object.defineProperty(new Event("connect"), "target", { value: port });
    serial.dispatchEvent(pluggedIn);
    await port.settled();
    await port.say(HELLO + said("p 1 24 8 1 0"));
    expect([turned, hub.trouble, hub.doubt?.code]).toEqual([[1], null, "back"]);
    expect(requestPort).toHaveBeenCalledTimes(1);
  });

  test("lets go of port and hold when it is disconnected, and hears nothing after that", async () => {
    const { port, hub, turned } = await connected();
    hub.disconnect();
    await port.settled();
    expect([port.isOpen, locks.held]).toEqual([false, 0]);
    expect(turned).toEqual([]);
    await hub.connect(ENCODER);
    await port.say(HELLO + said("p 1 24 8 1 0"));
    expect(turned).toEqual([1]);
  });

  const failing = (name: string) => Promise.reject(new DOMException("no", name));
  test.each([
    { why: "the browser has no serial ports", prepare: () => vi.stubGlobal("navigator", { locks }), code: "no-serial" },
    {
      why: "no port was chosen",
      prepare: ({ requestPort }: ReturnType<typeof page>) =>
        requestPort.mockImplementation(() => failing("NotFoundError")),
      code: "none-chosen",
    },
    {
      why: "the browser refuses",
      prepare: ({ requestPort }: ReturnType<typeof page>) =>
        requestPort.mockImplementation(() => failing("SecurityError")),
      code: "refused",
    },
    {
      why: "the port is open elsewhere",
      prepare: ({ port }: ReturnType<typeof page>) => {
        port.refusal = new DOMException("busy", "NetworkError");
      },
      code: "port-busy",
    },
    {
      why: "another page holds the dial",
      prepare: () => {
        locks.held = 1;
      },
      code: "second-page",
    },
  ])("says what is wrong where $why", async ({ prepare, code }) => {
    const made = page();
    prepare(made);
    const before = locks.held;
    await made.hub.connect(ENCODER);
    expect(made.hub.trouble?.code).toBe(code);
    expect(made.hub.trouble && deviceText(made.hub.trouble)).toMatch(/^[A-Z].*\.$/);
    expect([made.hub.isConnected, made.hub.isOpening, locks.held]).toEqual([false, false, before]);
  });

  test("is closed at once where it was given up while it was opened", async () => {
    const { port, hub } = page();
    const opening = hub.connect(ENCODER);
    hub.disconnect();
    await opening;
    await port.settled();
    expect([hub.isConnected, port.isOpen, locks.held, hub.trouble]).toEqual([false, false, 0, null]);
  });
});
