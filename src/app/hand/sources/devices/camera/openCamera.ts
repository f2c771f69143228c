import { recallText, rememberText } from "../deviceMemory";
import { DeviceError, deviceProblem } from "../deviceWords";

/** How the device is called in sentences. */
export const CAMERA_NAME = "camera";

/** Which camera was used last. */
const LAST_CAMERA = "dial-camera";
/** Which side the camera is on, where none was used yet. */
const SIDE = "dial-camera-side";

/** Whether a camera looks away from the person or at the person, as browsers name it. */
export type CameraSide = "environment" | "user";

const nameOf = (error: unknown) => (error instanceof Error ? error.name : "");

const problemOf = (error: unknown) => {
  const name = nameOf(error);
  if (name === "NotAllowedError" || name === "SecurityError")
    return deviceProblem("refused", [], { device: CAMERA_NAME });
  if (name === "NotFoundError" || name === "OverconstrainedError") return deviceProblem("no-camera", []);
  if (name === "NotReadableError" || name === "AbortError") return deviceProblem("camera-busy", []);
  return null;
};

const ask = (which: MediaTrackConstraints) =>
  navigator.mediaDevices.getUserMedia({
    audio: false,
    video: { width: { ideal: 640 }, height: { ideal: 480 }, frameRate: { ideal: 60 }, ...which },
  });

/** A camera that is only preferred loses against another of more frames: so it is asked for by name, and another only where it is gone. */
async function cameraAsked(): Promise<MediaStream> {
  const bySide = { facingMode: sideAsked() };
  const last = lastCamera();
  if (last === null) return ask(bySide);
  return ask({ deviceId: { exact: last } }).catch((error: unknown) => {
    if (nameOf(error) === "OverconstrainedError" || nameOf(error) === "NotFoundError") return ask(bySide);
    throw error;
  });
}

/** Turns a camera on: the one used or chosen last, or else one on the side that was asked for. @throws {DeviceError} */
export async function openCamera(): Promise<MediaStream> {
  try {
    const stream = await cameraAsked();
    rememberText(LAST_CAMERA, cameraId(stream) ?? null);
    return stream;
  } catch (error) {
    const problem = problemOf(error);
    throw problem === null ? error : new DeviceError(problem);
  }
}

/** The camera that was used or chosen last, or null. */
export const lastCamera = (): string | null => recallText(LAST_CAMERA);

/** Takes this camera from the next time on. */
export function chooseCamera(id: string): void {
  rememberText(LAST_CAMERA, id);
}

/** The side that was asked for: away from the person, where nobody asked for another. */
export const sideAsked = (): CameraSide => (recallText(SIDE) === "user" ? "user" : "environment");

/** Takes a camera on this side from the next time on, while none is known by its name. */
export function chooseSide(side: CameraSide): void {
  rememberText(SIDE, side === "user" ? side : null);
}

/** The cameras that are there; none where the browser does not tell. */
export async function camerasHere(): Promise<readonly MediaDeviceInfo[]> {
  const devices = await navigator.mediaDevices.enumerateDevices().catch(() => []);
  return devices.filter(({ kind, deviceId }) => kind === "videoinput" && deviceId !== "");
}

/**
 * Listens for the return of the camera that was used last: plugged in again, or the page in sight again.
 *
 * @returns listens no more
 */
export function whenCameraIsBack(back: () => void): () => void {
  const ending = new AbortController();
  const look = async () => {
    const last = lastCamera();
    const isThere = (await camerasHere()).some(({ deviceId }) => deviceId === last);
    if (isThere && document.visibilityState === "visible" && !ending.signal.aborted) back();
  };
  navigator.mediaDevices.addEventListener("devicechange", look, ending);
  document.addEventListener("visibilitychange", look, ending);
  return () => ending.abort();
}

/** Which camera it is, by a name that the browser makes up for this app alone. */
export const cameraId = (stream: MediaStream): string | undefined => stream.getVideoTracks()[0]?.getSettings().deviceId;
