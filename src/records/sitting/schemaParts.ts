import * as z from "zod/mini";
import { must, whole, within } from "../../lock/fieldSchemas";

const codeRule = must("code", { example: "ran-past" });

/** A name in small letters, as faults and conditions have: "ran-past". */
export const code = z.string(codeRule).check(z.regex(/^[a-z0-9-]{1,80}$/, codeRule));

/** 64 hexadecimal digits. */
export const hash = z.string(must("hash")).check(z.regex(/^[0-9a-f]{64}$/, must("hash")));

/** A span of time, milliseconds; no sitting lasts a year. */
export const span = within(0, 366 * 86_400_000, "milliseconds");

/** How many of something there are. */
export const count = whole(0, 1_000_000);
