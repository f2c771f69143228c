import { AT_REST } from "../../../../../realdial/motion/deadBand";
import { type Followed, TakeOver } from "../../../../../realdial/motion/takeOver";
import type { PrintedSighting } from "../../../../../realdial/printed/printedDial";
import type { Problem } from "../../../../../wording/problem";
import { DeviceError, deviceProblem } from "../deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "../dialDevice";
import { CameraSetup } from "./CameraSetup";
import { CAMERA_VIEW } from "./cameraView";
import { DialFollower } from "./dialFollower";
import type { FollowAnswer } from "./followMessages";
import { GrayFrames } from "./grayFrames";
import { CAMERA_NAME, cameraId, openCamera, whenCameraIsBack } from "./openCamera";
import { PrintSheets } from "./PrintSheets";
import { sightProblem } from "./sightProblem";

/** A camera that is on: its frames go to the follower, what that sees to the dial. */
class CameraSession implements OpenDevice {
  readonly which: string | undefined;
  private readonly stream: MediaStream;
  private readonly link: DeviceLink;
  private readonly video = document.createElement("video");
  private readonly follower: DialFollower;
  private readonly frames: GrayFrames;
  private readonly takeOver = new TakeOver();
  private readonly ending = new AbortController();
  private isReady = false;
  /** What keeps it from turning the dial, as it was told last. */
  private held = "";

  constructor(stream: MediaStream, link: DeviceLink) {
    this.stream = stream;
    this.link = link;
    this.which = cameraId(stream);
    this.follower = new DialFollower(
      (answer) => this.see(answer),
      () => link.lost(deviceProblem("follower-failed", [])),
    );
    this.video.muted = true;
    this.video.srcObject = stream;
    // Where a page may not play by itself, it is told by no frame coming.
    this.video.play().catch(() => undefined);
    this.frames = new GrayFrames(
      this.video,
      () => !this.follower.isBusy,
      ({ image, at }) => this.follower.follow(image, at),
    );
    this.watch();
    CAMERA_VIEW.begin(stream);
  }

  readonly isInSetup = () => !CAMERA_VIEW.hasTakenOver;

  close(): void {
    this.ending.abort();
    this.frames.end();
    this.follower.end();
    this.video.srcObject = null;
    for (const track of this.stream.getTracks()) track.stop();
    CAMERA_VIEW.end();
  }

  private watch(): void {
    const { signal } = this.ending;
    const unplugged = () => this.link.lost(deviceProblem("unplugged", [], { device: CAMERA_NAME }));
    for (const track of this.stream.getTracks()) track.addEventListener("ended", unplugged, { signal });
    const looked = () => {
      if (document.visibilityState === "hidden") this.link.lost(deviceProblem("camera-hidden", []));
    };
    document.addEventListener("visibilitychange", looked, { signal });
  }

  private see(answer: FollowAnswer): void {
    const { sighting } = answer;
    CAMERA_VIEW.take(answer, { width: this.video.videoWidth, height: this.video.videoHeight });
    if (!this.isReady && sighting.position !== null) {
      this.isReady = true;
      this.link.ready(AT_REST / 100);
    }
    const { rest } = CAMERA_VIEW;
    if (rest !== null) this.link.measured(rest.noise / 100);
    if (sighting.turnsInDoubt && sighting.position !== null) this.follower.settle();
    const screen = this.link.shown();
    const followed = this.takeOver.take(sighting, screen === null ? null : screen.turns);
    this.hold(this.whyHeld(followed, sighting));
    if (followed.state !== "follows") return;
    CAMERA_VIEW.hasTakenOver = true;
    if (followed.hasComeBack) this.link.doubted(deviceProblem("sight-lost", []));
    if (followed.turns !== null) this.link.turned(followed.turns, sighting.at);
  }

  private whyHeld(followed: Followed, { shown }: PrintedSighting): Problem | null {
    if (followed.state === "lost") return sightProblem(followed.reason, shown);
    const screen = this.link.shown();
    if (followed.state === "follows" || screen === null) return null;
    return deviceProblem("come-to", [], { number: numberText(screen.number) });
  }

  /** Tells what keeps it from turning the dial, where that has become another. */
  private hold(why: Problem | null): void {
    const told = why === null ? "" : JSON.stringify(why);
    if (told === this.held) return;
    this.held = told;
    this.link.held(why);
  }
}

/** A number of the dial, to half a graduation. */
const numberText = (number: number) => String(Math.round(2 * number) / 2);

function unsupported(): Problem | null {
  if (!globalThis.isSecureContext) return deviceProblem("insecure", []);
  const hasAll =
    navigator.mediaDevices !== undefined && typeof HTMLVideoElement.prototype.requestVideoFrameCallback === "function";
  return hasAll ? null : deviceProblem("no-camera-here", []);
}

async function openSession(link: DeviceLink): Promise<OpenDevice> {
  const stream = await openCamera();
  if (document.visibilityState !== "hidden") return new CameraSession(stream, link);
  for (const track of stream.getTracks()) track.stop();
  throw new DeviceError(deviceProblem("camera-hidden", []));
}

/** A printed dial before a camera. */
export const PRINTED_DIAL: DialDevice = {
  kind: "printed-dial",
  title: "Printed dial and camera",
  about: "Print a dial, stick it on a jar lid, and turn it before the camera of this device.",
  unsupported,
  Needs: PrintSheets,
  Setup: CameraSetup,
  waiting: "searching for the dial in the picture",
  open: openSession,
  whenBack: (back) => whenCameraIsBack(() => back(openSession)),
};
