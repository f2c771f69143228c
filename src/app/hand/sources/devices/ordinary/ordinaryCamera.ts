import { AT_REST } from "../../../../../realdial/motion/deadBand";
import type { ShownSighting } from "../../../../../realdial/printed/shownDial";
import type { Problem } from "../../../../../wording/problem";
import { CameraFirst } from "../camera/CameraFirst";
import { DialFollower } from "../camera/dialFollower";
import { cameraInSight, LiveCamera, lookThrough, turnOff, withoutCamera } from "../camera/liveCamera";
import { SightedTurns } from "../camera/sightedTurns";
import { DeviceError, deviceProblem } from "../deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "../dialDevice";
import { tapsOf } from "./marks";
import { OrdinarySetup } from "./OrdinarySetup";
import type { OrdinaryAnswer, OrdinaryTask } from "./ordinaryMessages";
import { ORDINARY_VIEW } from "./ordinaryView";

const newWorker = () => new Worker(new URL("./ordinaryFollower.worker.ts", import.meta.url), { type: "module" });

/** Graduations of a dial where none is on the screen. */
const USUAL = 100;

/** An ordinary dial: first a question, then a camera, then the setup, then it is followed. */
class OrdinarySession implements OpenDevice {
  keepsMotion = true;
  private readonly link: DeviceLink;
  private readonly turns: SightedTurns;
  private readonly stopWatching: () => void;
  private camera: LiveCamera | null = null;
  private follower: DialFollower<OrdinaryAnswer, OrdinaryTask> | null = null;
  private isClosed = false;
  private isReady = false;
  /** Whether a picture is still looked at that was taken before the person went back to the marks. */
  private isLate = false;

  constructor(link: DeviceLink) {
    this.link = link;
    this.turns = new SightedTurns(link);
    this.stopWatching = this.turns.watch();
    ORDINARY_VIEW.ask({
      agree: (keepsMotion) => void this.begin(keepsMotion),
      refuse: () => link.lost(deviceProblem("not-practice", [])),
      find: () => ORDINARY_VIEW.goTo("finding"),
      again: () => {
        if (this.isReady) this.turns.setUpAgain();
        this.isLate = this.follower?.isBusy === true;
        ORDINARY_VIEW.backToMarks();
      },
      changeCamera: () => void this.changeCamera(),
    });
  }

  readonly isInSetup = () => !this.isReady || ORDINARY_VIEW.step !== "followed";

  readonly comeApart = () => this.turns.comeApart();

  close(): void {
    this.isClosed = true;
    this.stopWatching();
    this.turnCameraOff();
    ORDINARY_VIEW.end();
  }

  private turnCameraOff(): void {
    this.camera?.close();
    this.follower?.end();
  }

  /** Another camera is turned on in the place of this one; what was answered holds for it too. */
  private async changeCamera(): Promise<void> {
    if (this.isReady) this.turns.setUpAgain();
    this.turnCameraOff();
    this.isLate = false;
    ORDINARY_VIEW.change();
    await this.turnCameraOn();
  }

  private async begin(keepsMotion: boolean): Promise<void> {
    this.keepsMotion = keepsMotion;
    ORDINARY_VIEW.goTo("opening");
    await this.turnCameraOn();
  }

  private async turnCameraOn(): Promise<void> {
    try {
      const stream = await cameraInSight();
      if (this.isClosed) turnOff(stream);
      else lookThrough(stream, () => this.follow(stream));
    } catch (error) {
      this.link.lost(problemOf(error));
    }
  }

  private follow(stream: MediaStream): void {
    const follower = new DialFollower<OrdinaryAnswer, OrdinaryTask>(
      newWorker(),
      (answer) => this.see(answer),
      () => this.link.lost(deviceProblem("follower-failed", [])),
    );
    this.follower = follower;
    this.camera = new LiveCamera(stream, {
      isWanted: () => !follower.isBusy && ORDINARY_VIEW.step !== "marks",
      take: (image, at) => {
        const { step, marks } = ORDINARY_VIEW;
        const graduations = this.link.shown()?.perTurn ?? USUAL;
        follower.look(
          step === "finding"
            ? { kind: "find", image, taps: tapsOf(marks, image), graduations }
            : { kind: "frame", image, at },
        );
      },
      lost: (why) => this.link.lost(why),
    });
    ORDINARY_VIEW.begin(stream);
  }

  private get size() {
    return this.camera?.size ?? ORDINARY_VIEW.size;
  }

  private see({ seen, took }: OrdinaryAnswer): void {
    // The person went back to the marks while the picture was looked at, and may look for the dial anew by now.
    const { isLate } = this;
    this.isLate = false;
    if (isLate || ORDINARY_VIEW.step === "marks") return;
    if (seen.step === "untapped") ORDINARY_VIEW.toMarks(seen.problem);
    else if (seen.step === "followed") this.seeDial(seen.sighting, took);
    else {
      if (ORDINARY_VIEW.step === "finding") ORDINARY_VIEW.found();
      ORDINARY_VIEW.turned(seen, this.size);
    }
  }

  private seeDial(sighting: ShownSighting, took: number): void {
    ORDINARY_VIEW.step = "followed";
    ORDINARY_VIEW.take({ sighting, took }, this.size);
    if (!this.isReady && sighting.position !== null) {
      this.isReady = true;
      this.link.ready(AT_REST / 100);
    }
    const { rest } = ORDINARY_VIEW;
    if (rest !== null) this.link.measured(rest.noise / 100);
    if (sighting.turnsInDoubt && sighting.position !== null) this.follower?.settle();
    this.turns.take(sighting, this.whyNotTurned());
  }

  /** Why the dial on the screen must not be turned by it, however well it is seen. */
  private whyNotTurned(): Problem | null {
    const isRefused = !this.keepsMotion && this.link.shown()?.keepsMoves === true;
    return isRefused ? deviceProblem("moves-kept", []) : null;
  }
}

const problemOf = (error: unknown): Problem => {
  if (error instanceof DeviceError) return error.problem;
  const reason = error instanceof Error ? error.message : String(error);
  return deviceProblem("failed", [], { device: "camera", reason });
};

/** The dial of a practice lock before a camera, with nothing stuck on it. */
export const ORDINARY_DIAL: DialDevice = {
  kind: "ordinary-dial",
  title: "Dial of a practice lock, by camera",
  about:
    "Point a camera on a stand at the dial of a practice lock. Nothing is stuck on it. It must have as many graduations as the dial on the screen, and numerals.",
  isSetUpEachTime: true,
  waiting: "being set up",
  unsupported: withoutCamera,
  Before: CameraFirst,
  Setup: OrdinarySetup,
  open: async (link) => new OrdinarySession(link),
};
