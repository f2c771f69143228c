import type { DeviceLink } from "../../../src/app/hand/sources/devices/dialDevice";

/** A link that takes down what a device tells, in order: "ready 0.04", "turned 0.25", and codes of what is wrong. */
export function toldLink(shown: DeviceLink["shown"] = () => null): {
  readonly link: DeviceLink;
  readonly told: string[];
  /** Its noise each time it was measured, turns. */
  readonly noises: number[];
} {
  const told: string[] = [];
  const noises: number[] = [];
  const say = (text: string) => {
    told.push(text);
  };
  const link: DeviceLink = {
    ready: (step) => say(`ready ${Number(step.toFixed(6))}`),
    measured: (noise) => void noises.push(noise),
    turned: (turns) => say(`turned ${Number(turns.toFixed(6))}`),
    pressed: () => say("pressed"),
    held: (why) => say(`held ${why?.code ?? "no more"}`),
    doubted: ({ code }) => say(`doubted ${code}`),
    marked: (why) => say(`marked ${why}`),
    remarked: ({ code }) => say(`remarked ${code}`),
    shown,
    lost: ({ code }) => say(`lost ${code}`),
  };
  return { link, told, noises };
}
