import type { DeviceHub } from "./deviceHub";

/** Whether connecting it again is what helps: nothing is open, or what is open has fallen silent or never spoke. */
export const isOut = ({ isConnected, isOpening, trouble }: Pick<DeviceHub, "isConnected" | "isOpening" | "trouble">) =>
  !isOpening && (!isConnected || trouble?.code === "silent" || trouble?.code === "no-hello");
