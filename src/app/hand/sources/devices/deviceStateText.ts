import { graduationsText, sizeText } from "../../../../wording/amountWords";
import type { DeviceHub } from "./deviceHub";

type DeviceState = Pick<
  DeviceHub,
  "device" | "source" | "isOpening" | "isConnected" | "trouble" | "learning" | "isLearned" | "watch"
>;

/** How a device is doing, in a few words. */
export function deviceStateText(state: DeviceState): string {
  const { device, source, isOpening, isConnected, trouble, learning, isLearned, watch } = state;
  if (device === null) return "not connected";
  if (isOpening) return "connecting";
  if (learning !== null) return `turn it ${learning} by one whole turn`;
  if (!isConnected) return "not connected";
  if (isLearned === false) return "not learned yet";
  if (source === null) return device.waiting ?? "waiting for it to answer";
  if (trouble !== null || watch.isAsking) return "not turning the dial";
  const steps = graduationsText(sizeText(source.resolution));
  return source.isCoarse ? `turns the dial, coarse: steps of ${steps}` : `turns the dial in steps of ${steps}`;
}
