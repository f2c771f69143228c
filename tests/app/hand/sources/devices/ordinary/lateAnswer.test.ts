import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { ORDINARY_DIAL } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryCamera";
import type { OrdinaryTask } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryMessages";
import { ORDINARY_VIEW } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryView";
import type { OrdinarySeen } from "../../../../../../src/realdial/ordinary/ordinaryDial";
import { StubStorage } from "../../../../../support/board/stubStorage";
import { toldLink } from "../../../../../support/board/toldLink";

let asked: OrdinaryTask["kind"][] = [];
let answer = (_seen: OrdinarySeen) => undefined as unknown;
let frame = () => undefined as unknown;

/** Takes tasks down; a test answers them when it wants to. */
class StubWorker {
  onmessage: (event: { readonly data: unknown }) => void = () => undefined;
  constructor() {
    answer = (seen) => this.onmessage({ data: { seen, took: 1 } });
  }
  readonly postMessage = ({ kind }: OrdinaryTask) => void asked.push(kind);
  readonly terminate = () => undefined;
}

/** A canvas of four pixels: the browser has no other way to a video's frame here. */
class StubCanvas {
  readonly width = 2;
  readonly height = 2;
  readonly getContext = () => ({
    drawImage: () => undefined,
    getImageData: () => ({ width: 2, height: 2, data: new Uint8ClampedArray(16) }),
  });
}

let now = 0;

beforeEach(() => {
  asked = [];
  now = 0;
  let take = (_now: number, _meta: object) => undefined as unknown;
  const video = {
    videoWidth: 2,
    videoHeight: 2,
    play: async () => undefined,
    cancelVideoFrameCallback: () => undefined,
    requestVideoFrameCallback: (callback: typeof take) => {
      take = callback;
      return 1;
    },
  };
  frame = async () => {
    now += 33;
    take(now, {});
    await new Promise((done) => setTimeout(done));
  };
  const stream = { getTracks: () => [], getVideoTracks: () => [] };
  const page = { visibilityState: "visible", createElement: () => video };
  vi.stubGlobal("localStorage", new StubStorage());
  vi.stubGlobal("document", Object.assign(new EventTarget(), page));
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia: async () => stream } });
  vi.stubGlobal("Worker", StubWorker);
  vi.stubGlobal("OffscreenCanvas", StubCanvas);
});
afterEach(() => void vi.unstubAllGlobals());

const TURNING = { step: "turning", part: 0.9, hint: null, shown: { markers: [], rings: [] } } as const;

test("who goes back to the marks and finds the dial anew gets no answer of the time before", async () => {
  const { link } = toldLink();
  const camera = await ORDINARY_DIAL.open(link);
  ORDINARY_VIEW.acts?.agree(true);
  await vi.waitFor(() => expect(ORDINARY_VIEW.step).toBe("marks"));
  ORDINARY_VIEW.acts?.find();
  await frame();
  answer(TURNING);
  await frame();
  // The last picture of the turn takes a slow device seconds, and the person goes back meanwhile.
  ORDINARY_VIEW.acts?.again();
  ORDINARY_VIEW.acts?.find();
  answer({ ...TURNING, part: 1 });
  await frame();
  expect([asked, ORDINARY_VIEW.step]).toEqual([["find", "frame", "find"], "finding"]);
  answer({ ...TURNING, part: 0 });
  await frame();
  expect([asked.at(-1), ORDINARY_VIEW.step]).toEqual(["frame", "turn"]);
  camera.close();
});
