import type { DeviceHub } from "../../hand/sources/devices/deviceHub";
import type { DialDevice } from "../../hand/sources/devices/dialDevice";

/** Whether a device that is set up each time still is, or is again. */
export const isBeingSetUp = (
  device: DialDevice,
  hub: Pick<DeviceHub, "device" | "isConnected" | "source" | "trouble">,
) =>
  device.isSetUpEachTime === true &&
  hub.device === device &&
  hub.isConnected &&
  (hub.source === null ? hub.trouble === null : hub.trouble?.code === "set-up-again");
