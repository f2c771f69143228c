import type { GrayImage } from "../../../../../realdial/image/grayImage";
import type { Problem } from "../../../../../wording/problem";
import { DeviceError, deviceProblem } from "../deviceWords";
import { GrayFrames } from "./grayFrames";
import { CAMERA_NAME, openCamera } from "./openCamera";

/** Who looks through a camera. */
interface Looker {
  /** Whether a frame is wanted now: asked at each, before it costs anything. */
  readonly isWanted: () => boolean;
  /** @param at - capture time, ms */
  readonly take: (image: GrayImage, at: number) => void;
  readonly lost: (why: Problem) => void;
}

/** A camera that is on, until it is closed. */
export class LiveCamera {
  readonly stream: MediaStream;
  private readonly video = document.createElement("video");
  private readonly frames: GrayFrames;
  private readonly ending = new AbortController();

  constructor(stream: MediaStream, { isWanted, take, lost }: Looker) {
    this.stream = stream;
    this.video.muted = true;
    this.video.srcObject = stream;
    // Where a page may not play by itself, it is told by no frame coming.
    this.video.play().catch(() => undefined);
    this.frames = new GrayFrames(this.video, isWanted, ({ image, at }) => take(image, at));
    this.watch(lost);
  }

  /** Of its pictures, pixels. */
  get size(): { readonly width: number; readonly height: number } {
    return { width: this.video.videoWidth, height: this.video.videoHeight };
  }

  close(): void {
    this.ending.abort();
    this.frames.end();
    this.video.srcObject = null;
    turnOff(this.stream);
  }

  private watch(lost: Looker["lost"]): void {
    const { signal } = this.ending;
    const unplugged = () => lost(deviceProblem("unplugged", [], { device: CAMERA_NAME }));
    for (const track of this.stream.getTracks()) track.addEventListener("ended", unplugged, { signal });
    const looked = () => {
      if (document.visibilityState === "hidden") lost(deviceProblem("camera-hidden", []));
    };
    document.addEventListener("visibilitychange", looked, { signal });
  }
}

/** Turns a camera and its light off. */
export function turnOff(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}

/** Begins to look through a camera; where that fails, it is turned off again. @throws what failed */
export function lookThrough<Look>(stream: MediaStream, begin: (stream: MediaStream) => Look): Look {
  try {
    return begin(stream);
  } catch (error) {
    turnOff(stream);
    throw error;
  }
}

/** Turns a camera on for a page that is in sight. @throws {DeviceError} */
export async function cameraInSight(): Promise<MediaStream> {
  const stream = await openCamera();
  if (document.visibilityState !== "hidden") return stream;
  turnOff(stream);
  throw new DeviceError(deviceProblem("camera-hidden", []));
}

/** Why this page can have no camera's pictures, or null. */
export function withoutCamera(): Problem | null {
  if (!globalThis.isSecureContext) return deviceProblem("insecure", []);
  const hasAll =
    navigator.mediaDevices !== undefined && typeof HTMLVideoElement.prototype.requestVideoFrameCallback === "function";
  return hasAll ? null : deviceProblem("no-camera-here", []);
}
