import { type KeyKnob, keyStep, learnKeyKnob } from "../../../../realdial/knobs/keyKnob";
import { keyKnobSchema } from "../../../../realdial/knobs/knobSchemas";
import { deviceProblem } from "./deviceWords";
import type { DialDevice } from "./dialDevice";
import { SteppedKnob } from "./steppedKnob";

const KIND = {
  key: "dial-device-keys",
  isPlace: false,
  read: (stored: unknown) => keyKnobSchema.safeParse(stored).data ?? null,
  learn: learnKeyKnob,
  turnsOf: (knob: KeyKnob, key: string) => keyStep(knob, key) / knob.perTurn,
  stepOf: (knob: KeyKnob) => 1 / knob.perTurn,
};

/** What works the page itself, so that one can go on while a knob is learned. */
const OF_THE_PAGE = ["Tab", "Enter", " ", "Escape", "Shift", "Control", "Alt", "Meta"];

/** A knob of a keyboard, or one for the volume: each step is a key. */
export const KNOB_KEYS: DialDevice = {
  kind: "knob-keys",
  title: "Volume or keyboard knob",
  about: "Usually coarse: for turns and their order, not for stops. A volume knob may change the volume as well.",
  unsupported: () => null,
  open: async (link) => {
    const knob = new SteppedKnob<string, KeyKnob>(KIND, link);
    const press = (event: KeyboardEvent) => {
      const isOwn = knob.known !== null && keyStep(knob.known, event.key) !== 0;
      if (OF_THE_PAGE.includes(event.key) || !(isOwn || knob.isLearning)) return;
      // Before the page takes the key for something else.
      event.preventDefault();
      event.stopImmediatePropagation();
      if (!event.repeat) knob.take(event.key, event.timeStamp);
    };
    // Another window had the keys meanwhile.
    const comeBack = () => {
      if (knob.isLearned) link.doubted(deviceProblem("hidden", [], { device: "knob" }));
    };
    addEventListener("keydown", press, { capture: true });
    addEventListener("focus", comeBack);
    const close = () => {
      removeEventListener("keydown", press, { capture: true });
      removeEventListener("focus", comeBack);
    };
    return { close, learner: knob };
  },
};
