import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import type { OpenDevice } from "../../../../../src/app/hand/sources/devices/dialDevice";
import { PHONE } from "../../../../../src/app/hand/sources/devices/phone";
import { toldLink } from "../../../../support/board/toldLink";

let page = new EventTarget();
let open: OpenDevice | null = null;

beforeEach(() => {
  vi.useFakeTimers();
  page = new EventTarget();
  vi.stubGlobal("addEventListener", page.addEventListener.bind(page));
  vi.stubGlobal("removeEventListener", page.removeEventListener.bind(page));
  vi.stubGlobal("DeviceOrientationEvent", {});
});
afterEach(() => {
  open?.close();
  open = null;
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const lies = (alpha: number | null, at: number) => {
  const event = Object.assign(new Event("deviceorientation"), { alpha, beta: 0, gamma: 0 });
  Object.defineProperty(event, "timeStamp", { value: at });
  page.dispatchEvent(event);
};

async function opened() {
  const { link, told } = toldLink();
  open = await PHONE.open(link);
  return told;
}

describe("a phone on a knob", () => {
  test("turns the dial as it is turned, left positive, through north", async () => {
    const told = await opened();
    lies(350, 0);
    lies(8.108, 16);
    lies(350, 32);
    // Of the first move 0.03 graduations are taken for creep, of the second what has been allowed since.
    expect(told).toEqual(["ready 0.000278", "turned 0.05", "turned -0.000295"]);
  });

  test("says that it was out of sight, and how it drifts", async () => {
    const told = await opened();
    for (let k = 0; k < 400; k++) lies(10 + k * 0.001, k * 16);
    expect(told).toEqual(["ready 0.000278", "remarked drift"]);
    lies(100, 20_000);
    expect(told.at(-1)).toBe("doubted hidden");
  });

  test("says nothing of a drift that is none", async () => {
    const told = await opened();
    for (let k = 0; k < 400; k++) lies(10, k * 16);
    expect(told).toEqual(["ready 0.000278"]);
  });

  test("says that there is no sensor, where nothing comes or nothing with numbers", async () => {
    const told = await opened();
    lies(null, 0);
    vi.advanceTimersByTime(2500);
    expect(told).toEqual(["lost no-sensor"]);
  });

  test("measures how quiet it is while it rests", async () => {
    const { link, noises } = toldLink();
    open = await PHONE.open(link);
    for (let k = 0; k < 40; k++) lies(10, k * 16);
    expect(noises).toEqual([]);
    for (let k = 40; k < 80; k++) lies(10, k * 16);
    // Nothing scatters: what is left is where it lies within a step of a tenth of a degree.
    expect(noises.at(-1)).toBeCloseTo(1 / 3600 / Math.sqrt(12), 9);
    for (let k = 80; k < 160; k++) lies(10 + (k % 2), k * 16);
    expect(noises.at(-1)).toBeGreaterThan(0.0005);
  });

  test("asks where the browser wants to be asked", async () => {
    const requestPermission = vi.fn(async () => "denied");
    vi.stubGlobal("DeviceOrientationEvent", { requestPermission });
    await expect(PHONE.open(toldLink().link)).rejects.toMatchObject({ code: "refused" });
    requestPermission.mockResolvedValue("granted");
    expect(await opened()).toEqual([]);
  });

  test("may not be there", () => {
    expect(PHONE.unsupported()).toBeNull();
    vi.stubGlobal("DeviceOrientationEvent", undefined);
    expect(PHONE.unsupported()?.code).toBe("no-orientation");
  });
});
