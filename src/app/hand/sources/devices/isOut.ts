import type { DeviceHub } from "./deviceHub";

/** What is open and tells nothing: it has fallen silent, or never spoke. */
const STILL: readonly (string | undefined)[] = ["silent", "no-hello", "no-pictures"];

/** Whether connecting it again is what helps: nothing is open, or what is open tells nothing. */
export const isOut = ({ isConnected, isOpening, trouble }: Pick<DeviceHub, "isConnected" | "isOpening" | "trouble">) =>
  !isOpening && (!isConnected || STILL.includes(trouble?.code));
