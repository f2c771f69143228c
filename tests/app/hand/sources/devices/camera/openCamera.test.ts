import { afterEach, expect, test, vi } from "vitest";
import {
  chooseCamera,
  chooseSide,
  lastCamera,
  openCamera,
} from "../../../../../../src/app/hand/sources/devices/camera/openCamera";
import { DeviceError } from "../../../../../../src/app/hand/sources/devices/deviceWords";

afterEach(() => vi.unstubAllGlobals());

/** What a camera that fails with such an error is said to be. */
async function codeOf(name: string): Promise<string> {
  const getUserMedia = () => Promise.reject(Object.assign(new Error("no"), { name }));
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia } });
  const error = await openCamera().catch((caught: unknown) => caught);
  return error instanceof DeviceError ? error.problem.code : "another";
}

test.each([
  ["NotAllowedError", "refused"],
  ["SecurityError", "refused"],
  ["NotFoundError", "no-camera"],
  ["NotReadableError", "camera-busy"],
  ["AbortError", "camera-busy"],
  ["TypeError", "another"],
])("a camera that is refused by %s has its own sentence: %s", async (name, code) => {
  expect(await codeOf(name)).toBe(code);
});

test("a camera that was chosen is asked for by name, and another on its side only where it is gone", async () => {
  const asked: unknown[] = [];
  const stream = { getVideoTracks: () => [{ getSettings: () => ({ deviceId: "second" }) }] } as unknown as MediaStream;
  const here = new Set(["first", "second"]);
  const getUserMedia = async ({ video }: { video: { deviceId?: { exact: string }; facingMode?: string } }) => {
    asked.push(video.deviceId?.exact ?? video.facingMode);
    if (video.deviceId === undefined || here.has(video.deviceId.exact)) return stream;
    throw Object.assign(new Error("gone"), { name: "OverconstrainedError" });
  };
  const kept = new Map<string, string>();
  vi.stubGlobal("navigator", { mediaDevices: { getUserMedia } });
  vi.stubGlobal("localStorage", { getItem: (key: string) => kept.get(key) ?? null, setItem: kept.set.bind(kept) });
  chooseCamera("first");
  expect(await openCamera()).toBe(stream);
  expect([asked, lastCamera()]).toEqual([["first"], "second"]);
  chooseSide("user");
  here.clear();
  await openCamera();
  expect(asked).toEqual(["first", "second", "user"]);
});
