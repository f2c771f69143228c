import { graduationsText, sizeText } from "../../../../wording/amountWords";
import type { DeviceHub } from "./deviceHub";

type DeviceState = Pick<DeviceHub, "device" | "source" | "isOpening" | "trouble" | "learning" | "isLearned">;

/** How a device is doing, in a few words. */
export function deviceStateText({ device, source, isOpening, trouble, learning, isLearned }: DeviceState): string {
  if (device === null) return "not connected";
  if (isOpening) return "connecting";
  if (learning !== null) return `turn it ${learning} by one whole turn`;
  if (trouble !== null) return source === null ? "not connected" : "not turning the dial";
  if (isLearned === false) return "has to be learned";
  if (source === null) return "waiting for it to answer";
  const steps = graduationsText(sizeText(source.resolution));
  return source.isCoarse ? `turns the dial, coarse: steps of ${steps}` : `turns the dial in steps of ${steps}`;
}
