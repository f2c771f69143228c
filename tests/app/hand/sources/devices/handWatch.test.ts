import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { DeviceHub } from "../../../../../src/app/hand/sources/devices/deviceHub";
import { deviceStateText } from "../../../../../src/app/hand/sources/devices/deviceStateText";
import { deviceProblem } from "../../../../../src/app/hand/sources/devices/deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "../../../../../src/app/hand/sources/devices/dialDevice";
import { dialInHand } from "../../../../support/board/dialInHand";
import { StubFrames } from "../../../../support/board/stubFrames";
import { StubLocks } from "../../../../support/board/stubLocks";

/** A page with a dial that really turns, and a device of a kind that is connected. */
async function connected({
  kind = "encoder",
  opened = {},
}: {
  kind?: DialDevice["kind"];
  opened?: Partial<OpenDevice>;
} = {}) {
  const marks: string[] = [];
  const onDoubt = (why: string) => {
    marks.push(why);
    return true;
  };
  const stop = vi.fn();
  const atRest = { isNear: () => Math.abs(dial.now.seen) <= 2, says: "" };
  const dial = dialInHand(
    (by) => {
      dial.now.seen += by;
    },
    { onDoubt, acts: [{ key: " ", act: stop, atRest }] },
  );
  const dials = { dial };
  const frames = new StubFrames();
  const hub = new DeviceHub(dials, frames);
  hubs.push(hub);
  let link: DeviceLink | null = null;
  const device: DialDevice = {
    kind,
    title: "A knob",
    about: "",
    unsupported: () => null,
    open: async (given) => {
      link = given;
      return { close: () => undefined, ...opened };
    },
  };
  await hub.connect(device);
  const told = link as unknown as DeviceLink;
  told.ready(0.0001);
  let turns = 0;
  return {
    hub,
    dials,
    dial,
    stop,
    marks,
    link: told,
    /** @param by - graduations */
    turn: (by: number) => {
      turns += by / 100;
      told.turned(turns, performance.now());
      told.measured(0);
      told.held(null);
    },
  };
}

let hubs: DeviceHub[] = [];
const stored = new Map<string, string>();

beforeEach(() => {
  vi.useFakeTimers();
  hubs = [];
  stored.clear();
  vi.stubGlobal("navigator", { locks: new StubLocks() });
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => stored.get(key) ?? null,
    setItem: (key: string, text: string) => stored.set(key, text),
    removeItem: (key: string) => stored.delete(key),
  });
});
afterEach(() => {
  for (const hub of hubs) hub.disconnect();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe("a stop is recorded", () => {
  test("by the encoder's button, unless another way was chosen; that is remembered", async () => {
    const { hub, link, stop } = await connected();
    expect(hub.watch.stops.ways).toEqual(["key", "rest", "button"]);
    link.pressed(0);
    expect(stop).toHaveBeenCalledTimes(1);
    hub.watch.chooseStop("key");
    link.pressed(0);
    expect(stop).toHaveBeenCalledTimes(1);
    hub.disconnect();
    expect((await connected()).hub.watch.stops.way).toBe("key");
  });

  test("by the space bar of a device without a button, whatever was chosen for one with", async () => {
    const { hub } = await connected();
    hub.watch.chooseStop("button");
    hub.disconnect();
    const other = (await connected({ kind: "printed-dial" })).hub.watch.stops;
    expect(other.ways).toEqual(["key", "rest"]);
    expect(other.way).toBe("key");
  });

  test("by a rest of one second within the window, once for each stop", async () => {
    const { hub, turn, stop } = await connected();
    hub.watch.chooseStop("rest");
    vi.advanceTimersByTime(5000);
    expect(stop).not.toHaveBeenCalled();
    turn(-1.5);
    vi.advanceTimersByTime(900);
    expect(stop).not.toHaveBeenCalled();
    vi.advanceTimersByTime(500);
    expect(stop).toHaveBeenCalledTimes(1);
    // A reading that flickers is no other stop.
    turn(0.07);
    vi.advanceTimersByTime(3000);
    expect(stop).toHaveBeenCalledTimes(1);
    turn(40);
    vi.advanceTimersByTime(3000);
    expect(stop).toHaveBeenCalledTimes(1);
    turn(-39);
    vi.advanceTimersByTime(3000);
    expect(stop).toHaveBeenCalledTimes(2);
  });

  test("never by a rest that another way was chosen for, nor where nothing can be recorded", async () => {
    const { hub, turn, stop, dial } = await connected();
    turn(-1);
    vi.advanceTimersByTime(3000);
    hub.watch.chooseStop("rest");
    dial.now.acts = [{ key: " ", act: stop, isClosed: true }];
    turn(-40);
    vi.advanceTimersByTime(3000);
    turn(40);
    vi.advanceTimersByTime(3000);
    expect(stop).not.toHaveBeenCalled();
  });
});

describe("a dial on the screen that is not where the hand left it", () => {
  const strays = {
    "was turned by the mouse": ({ dial }: Awaited<ReturnType<typeof connected>>) => {
      dial.now.seen += 3;
      dial.screenMoved();
    },
    "was set elsewhere": ({ dial }: Awaited<ReturnType<typeof connected>>) => {
      dial.now.seen = 70;
    },
    "is another one": ({ dials, dial }: Awaited<ReturnType<typeof connected>>) => {
      dials.dial = { ...dial };
    },
  };
  const rows = Object.entries(strays);

  test.each(rows)("that %s: a device that sees numbers has to come to it", async (_, stray) => {
    const comeApart = vi.fn();
    const page = await connected({ kind: "printed-dial", opened: { comeApart } });
    page.turn(12);
    vi.advanceTimersByTime(2000);
    expect(comeApart).not.toHaveBeenCalled();
    stray(page);
    vi.advanceTimersByTime(200);
    expect(comeApart).toHaveBeenCalledTimes(1);
    vi.advanceTimersByTime(2000);
    expect(comeApart).toHaveBeenCalledTimes(1);
    expect(page.hub.watch.hasNumbers).toBeUndefined();
    expect(page.marks).toEqual([]);
  });

  test.each(rows)("that %s: a knob with numbers turns nothing until it is set", async (_, stray) => {
    const page = await connected();
    page.hub.watch.setNumbers(true);
    page.link.pressed(0);
    page.turn(12);
    vi.advanceTimersByTime(2000);
    expect(page.hub.watch.isAsking).toBe(false);
    stray(page);
    vi.advanceTimersByTime(200);
    expect(deviceStateText(page.hub)).toBe("not turning the dial");
    const { seen } = page.dial.now;
    page.turn(5);
    expect(page.dial.now.seen).toBe(seen);
    page.hub.watch.set();
    page.turn(2);
    page.turn(1);
    expect(page.dial.now.seen - seen).toBeCloseTo(3, 6);
  });

  test.each(rows)("that %s: a bare knob goes on, and that is said until it has turned and rested", async (_, stray) => {
    const page = await connected();
    page.turn(12);
    vi.advanceTimersByTime(2000);
    expect(page.hub.watch.hasGoneOn).toBe(false);
    stray(page);
    vi.advanceTimersByTime(200);
    expect(page.hub.watch.hasGoneOn).toBe(true);
    page.turn(1);
    expect(page.hub.watch.hasGoneOn).toBe(true);
    vi.advanceTimersByTime(2000);
    expect(page.hub.watch.hasGoneOn).toBe(false);
  });

  test("is not taken for that while an old attempt is shown", async () => {
    const page = await connected();
    page.turn(12);
    vi.advanceTimersByTime(2000);
    page.dial.now.isReplay = true;
    page.dial.now.seen = 55;
    vi.advanceTimersByTime(2000);
    expect(page.hub.watch.hasGoneOn).toBe(false);
  });
});

describe("the attempt under way is marked", () => {
  test.each([
    ["sight-lost", "sight-lost"],
    ["restarted", "restarted"],
    ["hidden", "hidden"],
  ] as const)("by the doubt %s", async (code, mark) => {
    const { hub, link, marks } = await connected();
    link.doubted(code === "hidden" ? deviceProblem(code, [], { device: "knob" }) : deviceProblem(code, []));
    expect(marks).toEqual([mark]);
    expect(hub.watch.isMarked).toBe(true);
  });

  test("by a plug that is pulled, and not by one that is let go of", async () => {
    const { hub, link, marks } = await connected();
    link.lost(deviceProblem("unplugged", [], { device: "knob" }));
    expect(marks).toEqual(["disconnected"]);
    hub.disconnect();
    expect(marks).toHaveLength(1);
  });

  test("by a camera that loses sight, before it has found it again", async () => {
    const { link, marks } = await connected();
    link.marked("sight-lost");
    expect(marks).toEqual(["sight-lost"]);
  });
});
