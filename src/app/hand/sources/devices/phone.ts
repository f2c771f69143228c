import { StepRest } from "../../../../realdial/knobs/stepRest";
import { type Attitude, TwistFollower } from "../../../../realdial/knobs/twist";
import { DeviceError, deviceProblem } from "./deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "./dialDevice";

const DEVICE = "phone";
const SENSOR = "phone's motion sensor";
/** Browsers give angles in tenths of a degree, turns. */
const STEP = 1 / 3600;
/** A device that tells nothing by then has no such sensor, milliseconds. */
const FIRST_WITHIN = 2000;
/** Drift is told again where it has changed by so much, graduations a minute; less than half of it is none. */
const DRIFT_CHANGE = 0.1;
/** Graduations of a dial where none is on the screen. */
const USUAL = 100;

/** Some browsers ask the person first, and only in a click. */
interface AskingEvent {
  readonly requestPermission?: () => Promise<string>;
}

const orientationEvent = () => (globalThis as { readonly DeviceOrientationEvent?: AskingEvent }).DeviceOrientationEvent;

const attitudeOf = ({ alpha, beta, gamma }: DeviceOrientationEvent): Attitude | null =>
  alpha === null || beta === null || gamma === null ? null : { alpha, beta, gamma };

function follow(link: DeviceLink): OpenDevice {
  const follower = new TwistFollower();
  const rest = new StepRest(STEP);
  let isReady = false;
  let toldDrift = 0;
  const tellDrift = () => {
    const drift = Math.abs(follower.driftPerMinute ?? 0) * (link.shown()?.perTurn ?? USUAL);
    if (drift < DRIFT_CHANGE / 2 || (toldDrift > 0 && Math.abs(drift - toldDrift) < DRIFT_CHANGE)) return;
    toldDrift = drift;
    link.remarked(deviceProblem("drift", [], { graduations: drift.toFixed(1) }));
  };
  const turned = (event: DeviceOrientationEvent) => {
    const attitude = attitudeOf(event);
    if (attitude === null) return;
    if (!isReady) link.ready(STEP);
    isReady = true;
    const before = follower.turns;
    if (follower.take(attitude, event.timeStamp)) link.doubted(deviceProblem("hidden", [], { device: DEVICE }));
    if (follower.turns !== before) link.turned(follower.turns, event.timeStamp);
    const noise = rest.take(follower.turns, event.timeStamp);
    if (noise !== null) link.measured(noise);
    tellDrift();
  };
  const timer = setTimeout(() => {
    if (!isReady) link.lost(deviceProblem("no-sensor", []));
  }, FIRST_WITHIN);
  addEventListener("deviceorientation", turned);
  return {
    close: () => {
      clearTimeout(timer);
      removeEventListener("deviceorientation", turned);
    },
  };
}

/** The phone that shows this page, on a knob. */
export const PHONE: DialDevice = {
  kind: "phone",
  title: "This phone on a knob",
  about: "Fix this phone flat on a knob, and turn the knob. Its sensor drifts a little.",
  unsupported: () => (orientationEvent() === undefined ? deviceProblem("no-orientation", []) : null),
  open: async (link) => {
    const asked = (await orientationEvent()?.requestPermission?.()) ?? "granted";
    if (asked !== "granted") throw new DeviceError(deviceProblem("refused", [], { device: SENSOR }));
    return follow(link);
  },
};
