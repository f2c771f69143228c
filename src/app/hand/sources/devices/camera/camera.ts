import { AT_REST } from "../../../../../realdial/motion/deadBand";
import { deviceProblem } from "../deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "../dialDevice";
import { CameraFirst } from "./CameraFirst";
import { CameraSetup } from "./CameraSetup";
import { CAMERA_VIEW } from "./cameraView";
import { DialFollower } from "./dialFollower";
import type { FollowAnswer } from "./followMessages";
import { cameraInSight, LiveCamera, lookThrough, withoutCamera } from "./liveCamera";
import { cameraId, whenCameraIsBack } from "./openCamera";
import { SightedTurns } from "./sightedTurns";

const newWorker = () => new Worker(new URL("./dialFollower.worker.ts", import.meta.url), { type: "module" });

/** A camera that is on: its frames go to the follower, what that sees to the dial. */
class CameraSession implements OpenDevice {
  readonly which: string | undefined;
  private readonly link: DeviceLink;
  private readonly camera: LiveCamera;
  private readonly follower: DialFollower<FollowAnswer>;
  private readonly turns: SightedTurns;
  private readonly stopWatching: () => void;
  private isReady = false;

  constructor(stream: MediaStream, link: DeviceLink) {
    this.link = link;
    this.which = cameraId(stream);
    this.turns = new SightedTurns(link);
    this.follower = new DialFollower(
      newWorker(),
      (answer) => this.see(answer),
      () => link.lost(deviceProblem("follower-failed", [])),
    );
    this.camera = new LiveCamera(stream, {
      isWanted: () => !this.follower.isBusy,
      take: (image, at) => this.follower.look({ kind: "frame", image, at }),
      lost: (why) => link.lost(why),
    });
    this.stopWatching = this.turns.watch();
    CAMERA_VIEW.begin(stream);
  }

  readonly isInSetup = () => !this.turns.hasTakenOver;

  readonly comeApart = () => this.turns.comeApart();

  close(): void {
    this.stopWatching();
    this.camera.close();
    this.follower.end();
    CAMERA_VIEW.end();
  }

  private see(answer: FollowAnswer): void {
    const { sighting } = answer;
    CAMERA_VIEW.take(answer, this.camera.size);
    if (!this.isReady && sighting.position !== null) {
      this.isReady = true;
      this.link.ready(AT_REST / 100);
    }
    const { rest } = CAMERA_VIEW;
    if (rest !== null) this.link.measured(rest.noise / 100);
    if (sighting.turnsInDoubt && sighting.position !== null) this.follower.settle();
    this.turns.take(sighting);
  }
}

const openSession: DialDevice["open"] = async (link) =>
  lookThrough(await cameraInSight(), (stream) => new CameraSession(stream, link));

/** A printed dial before a camera. */
export const PRINTED_DIAL: DialDevice = {
  kind: "printed-dial",
  title: "Printed dial and camera",
  about: "Print a dial, stick it on a jar lid, and turn it before the camera of this device.",
  unsupported: withoutCamera,
  Before: CameraFirst,
  Setup: CameraSetup,
  waiting: "searching for the dial in the picture",
  open: openSession,
  whenBack: (back) => whenCameraIsBack(() => back(openSession)),
};
