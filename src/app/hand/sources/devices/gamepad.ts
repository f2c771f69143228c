import type { Axes } from "../../../../realdial/knobs/axisKnob";
import { type ControllerKnob, controllerMove, learnController } from "../../../../realdial/knobs/controllerKnob";
import { controllerKnobSchema } from "../../../../realdial/knobs/knobSchemas";
import { deviceProblem } from "./deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "./dialDevice";
import { SteppedKnob } from "./steppedKnob";

const DEVICE = "game controller";
/** With a longer gap between two looks it may have gone round unseen, milliseconds. */
const LONGEST_GAP = 500;

const KIND = {
  key: "dial-device-gamepad",
  isPlace: true,
  read: (stored: unknown) => controllerKnobSchema.safeParse(stored).data ?? null,
  learn: learnController,
  turnsOf: (knob: ControllerKnob, axes: Axes, before: Axes | null) =>
    before === null ? 0 : controllerMove(knob, before, axes),
  stepOf: ({ step }: ControllerKnob) => step,
};

const firstController = () =>
  navigator.getGamepads().find((one) => one?.connected === true && one.axes.length > 0) ?? null;

/** Looks at the first controller in every frame: it tells nothing by itself. */
function watch(link: DeviceLink): OpenDevice {
  const knob = new SteppedKnob<Axes, ControllerKnob>(KIND, link);
  let frame = 0;
  let last: number | null = null;
  const see = (axes: Axes, now: number) => {
    if (last === null) link.held(null);
    else if (now - last > LONGEST_GAP) {
      knob.loseSight();
      link.doubted(deviceProblem("hidden", [], { device: DEVICE }));
    }
    last = now;
    knob.take([...axes], now);
  };
  const look = () => {
    const controller = firstController();
    if (controller === null && last !== null) return link.lost(deviceProblem("switched-off", [], { device: DEVICE }));
    if (controller !== null) see(controller.axes, performance.now());
    frame = requestAnimationFrame(look);
  };
  if (firstController() === null) link.held(deviceProblem("no-controller", []));
  frame = requestAnimationFrame(look);
  return { close: () => cancelAnimationFrame(frame), learner: knob };
}

/** A controller with an axis that turns without end, or a stick. */
export const GAMEPAD: DialDevice = {
  kind: "gamepad",
  title: "Dial of a game controller",
  about: "Turn a spinner that has no ends. Or push a stick to its rim, and turn it round there.",
  unsupported: () => ("getGamepads" in navigator ? null : deviceProblem("no-gamepads", [])),
  open: async (link) => watch(link),
  whenBack: (back) => {
    const ending = new AbortController();
    addEventListener("gamepadconnected", () => back(async (link) => watch(link)), ending);
    return () => ending.abort();
  },
};
