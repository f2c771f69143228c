import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { PRINTED_DIAL } from "../../../../../../src/app/hand/sources/devices/camera/camera";
import { ORDINARY_DIAL } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryCamera";
import { ORDINARY_VIEW } from "../../../../../../src/app/hand/sources/devices/ordinary/ordinaryView";
import { StubStorage } from "../../../../../support/board/stubStorage";
import { toldLink } from "../../../../../support/board/toldLink";

const track = { stop: vi.fn() };

/** A page whose camera comes on, and which may start no worker. */
beforeEach(() => {
  track.stop.mockClear();
  const stream = { getTracks: () => [track], getVideoTracks: () => [] };
  vi.stubGlobal("localStorage", new StubStorage());
  vi.stubGlobal("document", Object.assign(new EventTarget(), { visibilityState: "visible" }));
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia: async () => stream } });
  vi.stubGlobal(
    "Worker",
    class {
      constructor() {
        throw new Error("no worker here");
      }
    },
  );
});
afterEach(() => vi.unstubAllGlobals());

test("a printed dial's camera is turned off where nothing can look at its pictures", async () => {
  await expect(PRINTED_DIAL.open(toldLink().link)).rejects.toThrow("no worker here");
  expect(track.stop).toHaveBeenCalledTimes(1);
});

test("so is that of an ordinary dial, which says that it failed", async () => {
  const { link, told } = toldLink();
  await ORDINARY_DIAL.open(link);
  ORDINARY_VIEW.acts?.agree(true);
  await vi.waitFor(() => expect(told).toEqual(["lost failed"]));
  expect(track.stop).toHaveBeenCalledTimes(1);
});
