import type { Station } from "./sheet";

/** Every kind of station, in the order of the work. */
export const STATION_KINDS = [
  "dialing",
  "zeroing",
  "change",
  "trouble",
  "handover",
  "fitting",
  "service",
  "inspection",
] as const satisfies readonly Station["kind"][];
