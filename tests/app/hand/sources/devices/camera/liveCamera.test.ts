import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { cameraInSight, LiveCamera } from "../../../../../../src/app/hand/sources/devices/camera/liveCamera";
import { deviceText } from "../../../../../../src/app/hand/sources/devices/deviceWords";
import type { Problem } from "../../../../../../src/wording/problem";
import { StubStorage } from "../../../../../support/board/stubStorage";

class StubTrack extends EventTarget {
  readonly stop = vi.fn();
}

let page: EventTarget & { visibilityState: string; createElement: () => object };
let track: StubTrack;
let stream: MediaStream;

beforeEach(() => {
  const video = {
    play: async () => undefined,
    requestVideoFrameCallback: () => 1,
    cancelVideoFrameCallback: () => undefined,
  };
  page = Object.assign(new EventTarget(), { visibilityState: "visible", createElement: () => ({ ...video }) });
  track = new StubTrack();
  stream = { getTracks: () => [track], getVideoTracks: () => [] } as unknown as MediaStream;
  vi.stubGlobal("localStorage", new StubStorage());
  vi.stubGlobal("document", page);
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia: async () => stream } });
});
afterEach(() => vi.unstubAllGlobals());

/** A camera that is on, and the sentences of its loss. */
function live() {
  const said: string[] = [];
  const lost = (why: Problem) => said.push(deviceText(why));
  const camera = new LiveCamera(stream, { isWanted: () => false, take: () => undefined, lost });
  return { camera, said };
}

test("a camera whose plug is pulled says so, and no more once it is closed", () => {
  const { camera, said } = live();
  track.dispatchEvent(new Event("ended"));
  expect(said).toEqual([expect.stringMatching(/^The camera was unplugged\. Plug it in again\./)]);
  camera.close();
  expect(track.stop).toHaveBeenCalled();
  track.dispatchEvent(new Event("ended"));
  expect(said).toHaveLength(1);
});

test("a page that goes out of sight says that its camera was turned off", () => {
  const { said } = live();
  page.dispatchEvent(new Event("visibilitychange"));
  expect(said).toEqual([]);
  page.visibilityState = "hidden";
  page.dispatchEvent(new Event("visibilitychange"));
  expect(said).toEqual([expect.stringMatching(/^This page was in the background, so its camera was turned off\./)]);
});

test("a camera that comes on when its page is out of sight is turned off again", async () => {
  page.visibilityState = "hidden";
  await expect(cameraInSight()).rejects.toMatchObject({ code: "camera-hidden" });
  expect(track.stop).toHaveBeenCalledTimes(1);
});
