import { codeName, matching, must, whole, within } from "../../lock/fieldSchemas";

/** A name in small letters, as faults and conditions have: "ran-past". */
export const code = codeName(80, "ran-past");

/** 64 hexadecimal digits. */
export const hash = matching(/^[0-9a-f]{64}$/, must("hash"));

/** A span of time, milliseconds; no sitting lasts a year. */
export const span = within(0, 366 * 86_400_000, "milliseconds");

/** How many of something there are. */
export const count = whole(0, 1_000_000);
