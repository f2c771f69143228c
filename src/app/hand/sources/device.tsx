import { useStored } from "../../parts/page/useStore";
import { DEVICE_SLOT } from "./deviceSlot";
import type { DialSource } from "./dialSource";

function DeviceLine() {
  const Line = useStored(DEVICE_SLOT, (slot) => slot.Line);
  return Line && <Line />;
}

/** A device in the hand, whichever is connected. */
export const DEVICE: DialSource = {
  name: "device",
  help: [],
  start: (dial, turn) => DEVICE_SLOT.put({ ...dial, turn }),
  Controls: DeviceLine,
};
