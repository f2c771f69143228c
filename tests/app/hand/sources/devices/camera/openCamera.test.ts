import { afterEach, expect, test, vi } from "vitest";
import { openCamera } from "../../../../../../src/app/hand/sources/devices/camera/openCamera";
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
