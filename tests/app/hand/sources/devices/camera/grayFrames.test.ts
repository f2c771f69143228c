import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { GrayFrames } from "../../../../../../src/app/hand/sources/devices/camera/grayFrames";

/** Lets the frame that is being copied come. */
let copied: (() => void)[] = [];

class SlowFrame {
  readonly format = "I420";
  readonly visibleRect = { width: 2, height: 1 };
  readonly allocationSize = () => 2;
  readonly close = () => undefined;
  readonly copyTo = (all: Uint8Array) =>
    new Promise((resolve) => {
      copied.push(() => {
        all.set([7, 9]);
        resolve([{ offset: 0, stride: 2 }]);
      });
    });
}

let show = (_now: number) => undefined as unknown;
const video = {
  cancelVideoFrameCallback: () => undefined,
  requestVideoFrameCallback: (callback: (now: number, meta: object) => void) => {
    show = (now) => callback(now, {});
    return 1;
  },
} as unknown as HTMLVideoElement;

beforeEach(() => {
  copied = [];
  vi.stubGlobal("VideoFrame", SlowFrame);
});
afterEach(() => void vi.unstubAllGlobals());

const come = async () => {
  for (const one of copied.splice(0)) one();
  await new Promise((done) => setTimeout(done));
};

test("a frame that comes while another is copied is passed over, and so is one of the time before", async () => {
  const taken: unknown[] = [];
  const frames = new GrayFrames(
    video,
    () => true,
    ({ image, at }) => taken.push([at, ...image.data]),
  );
  show(10);
  show(20);
  await come();
  show(30);
  await come();
  show(25);
  await come();
  expect(taken).toEqual([
    [10, 7, 9],
    [30, 7, 9],
  ]);
  show(40);
  frames.end();
  await come();
  expect(taken).toHaveLength(2);
});
