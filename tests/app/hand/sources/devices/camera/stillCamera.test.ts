import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { PRINTED_DIAL } from "../../../../../../src/app/hand/sources/devices/camera/camera";
import type { FollowAnswer } from "../../../../../../src/app/hand/sources/devices/camera/followMessages";
import { ORDINARY_DIAL } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryCamera";
import { ORDINARY_VIEW } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryView";
import { StubStorage } from "../../../../../support/board/stubStorage";
import { toldLink } from "../../../../../support/board/toldLink";

/** A worker that answers when a test does it for it, and says nothing where it hangs. */
class StubWorker {
  static last: StubWorker;
  onmessage: (event: { readonly data: unknown }) => void = () => undefined;
  onerror: () => void = () => undefined;
  readonly postMessage = () => undefined;
  readonly terminate = () => undefined;
  constructor() {
    StubWorker.last = this;
  }
}

const SIGHTING: FollowAnswer["sighting"] = {
  at: 10,
  position: 0,
  sight: "sure",
  reason: "none",
  turnsInDoubt: false,
  shown: null,
};

const video = {
  play: async () => undefined,
  requestVideoFrameCallback: () => 1,
  cancelVideoFrameCallback: () => undefined,
};

beforeEach(() => {
  vi.useFakeTimers();
  const stream = { getTracks: () => [], getVideoTracks: () => [] };
  const page = { visibilityState: "visible", createElement: () => ({ ...video }) };
  vi.stubGlobal("localStorage", new StubStorage());
  vi.stubGlobal("document", Object.assign(new EventTarget(), page));
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia: async () => stream } });
  vi.stubGlobal("Worker", StubWorker);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const SCREEN = () => ({ turns: 0, number: 0, perTurn: 100, keepsMoves: true });
const STILL = ["marked sight-lost", "held no-pictures"];

test("what reads a printed dial's pictures hangs: that is told, until the camera is closed", async () => {
  const { link, told } = toldLink(SCREEN);
  const camera = await PRINTED_DIAL.open(link);
  StubWorker.last.onmessage({ data: { sighting: SIGHTING, took: 1 } });
  vi.advanceTimersByTime(3000);
  expect(told).toEqual(["ready 0.0006", "turned 0", ...STILL]);
  StubWorker.last.onmessage({ data: { sighting: { ...SIGHTING, at: 20 }, took: 1 } });
  camera.close();
  vi.advanceTimersByTime(3000);
  expect(told.slice(4)).toEqual(["held no more", "turned 0"]);
});

test("so is it of an ordinary dial, once that is followed", async () => {
  const { link, told } = toldLink(SCREEN);
  const camera = await ORDINARY_DIAL.open(link);
  ORDINARY_VIEW.acts?.agree(true);
  await vi.waitFor(() => expect(ORDINARY_VIEW.step).toBe("marks"));
  ORDINARY_VIEW.acts?.find();
  vi.advanceTimersByTime(9000);
  expect(told).toEqual([]);
  StubWorker.last.onmessage({ data: { seen: { step: "followed", sighting: SIGHTING }, took: 1 } });
  vi.advanceTimersByTime(3000);
  expect(told).toEqual(["ready 0.0006", "turned 0", ...STILL]);
  camera.close();
});

test("what reads the pictures dies: the device is lost", async () => {
  const { link, told } = toldLink(SCREEN);
  const camera = await PRINTED_DIAL.open(link);
  StubWorker.last.onerror();
  expect(told).toEqual(["lost follower-failed"]);
  camera.close();
});
