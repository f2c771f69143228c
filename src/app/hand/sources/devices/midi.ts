import { midiKnobSchema } from "../../../../realdial/knobs/knobSchemas";
import {
  type ControlChange,
  learnMidiKnob,
  type MidiKnob,
  midiSteps,
  readControlChange,
} from "../../../../realdial/knobs/midiKnob";
import { DeviceError, deviceProblem } from "./deviceWords";
import type { DeviceLink, DialDevice, OpenDevice } from "./dialDevice";
import { SteppedKnob } from "./steppedKnob";

const DEVICE = "MIDI device";

const KIND = {
  key: "dial-device-midi",
  isPlace: false,
  read: (stored: unknown) => midiKnobSchema.safeParse(stored).data ?? null,
  learn: learnMidiKnob,
  turnsOf: (knob: MidiKnob, change: ControlChange) => midiSteps(knob, change) / knob.perTurn,
  stepOf: (knob: MidiKnob) => 1 / Math.abs(knob.perTurn),
};

const pluggedInOf = ({ inputs }: MIDIAccess) => [...inputs.values()].filter(({ state }) => state === "connected");

/** Hears every input that is plugged in, now and later. */
function hear(access: MIDIAccess, link: DeviceLink): OpenDevice {
  const knob = new SteppedKnob(KIND, link);
  const ending = new AbortController();
  const { signal } = ending;
  /** Where the knob was heard last: a system may have inputs of its own, which are always there. */
  let own: MIDIInput | null = null;
  const message = ({ data, timeStamp, currentTarget }: MIDIMessageEvent) => {
    const change = data === null ? null : readControlChange(data);
    if (change === null) return;
    if (knob.isLearning || (knob.known !== null && midiSteps(knob.known, change) !== 0))
      own = currentTarget as MIDIInput;
    knob.take(change, timeStamp);
  };
  const listen = () => {
    // The same listener twice is heard once.
    for (const input of pluggedInOf(access)) input.addEventListener("midimessage", message, { signal });
  };
  let hadAny = pluggedInOf(access).length > 0;
  const changed = () => {
    const hasAny = pluggedInOf(access).length > 0;
    if ((hadAny && !hasAny) || own?.state === "disconnected")
      return link.lost(deviceProblem("unplugged", [], { device: DEVICE }));
    if (!hadAny && hasAny) link.held(null);
    hadAny = hasAny;
    listen();
  };
  access.addEventListener("statechange", changed, { signal });
  if (!hadAny) link.held(deviceProblem("no-inputs", []));
  listen();
  return { close: () => ending.abort(), learner: knob };
}

/** @throws {DeviceError} */
const midiAccess = () =>
  navigator.requestMIDIAccess().catch(() => {
    throw new DeviceError(deviceProblem("refused", [], { device: DEVICE }));
  });

/** A MIDI knob without ends. */
export const MIDI: DialDevice = {
  kind: "midi",
  title: "MIDI knob without ends",
  about: "Usually coarse: for turns and their order, not for stops.",
  unsupported: () => ("requestMIDIAccess" in navigator ? null : deviceProblem("no-midi", [])),
  open: async (link) => hear(await midiAccess(), link),
  whenBack: (back) => {
    const ending = new AbortController();
    const listen = (access: MIDIAccess) => {
      const others = new Set(pluggedInOf(access));
      const pluggedIn = () => {
        const isBack = pluggedInOf(access).some((input) => !others.has(input));
        if (isBack) back(async (link) => hear(access, link));
      };
      access.addEventListener("statechange", pluggedIn, ending);
    };
    midiAccess().then(listen, () => undefined);
    return () => ending.abort();
  },
};
