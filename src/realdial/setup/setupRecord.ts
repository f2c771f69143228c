import * as z from "zod/mini";
import { within } from "../../lock/fieldSchemas";

/** A turn of the largest dial: nothing is off by more, graduations. */
const LARGEST = 1000;
/** Longer than any hand waits for a screen, milliseconds. */
const LONGEST_MS = 60_000;

/** The end of the time that a date of this language can be in (ECMA-262, time values), ms since 1970. */
const LATEST_MS = 8.64e15;

/** What the setup of a device found, as it is remembered for that device. */
const setupSchema = z.object({
  /** When it was made, ms since 1970. */
  at: within(0, LATEST_MS, "ms"),
  perTurn: within(1, LARGEST, "graduations"),
  resolution: within(0, LARGEST, "graduations"),
  /** Standard deviation at rest; null where it was not measured. */
  noise: z.nullable(within(0, LARGEST, "graduations")),
  /** Pictures a second; null of what takes none. */
  rate: z.nullable(within(0, 1000, "pictures a second")),
  /** Hand to screen, of the middle move; null where too few were made. */
  delay_ms: z.nullable(within(0, LONGEST_MS, "ms")),
  /** Of the three stops that were asked for, left positive. */
  errors: z.array(within(-LARGEST, LARGEST, "graduations")).check(z.maxLength(3)),
});

/** What the setup of a device found. */
export type SetupRecord = z.infer<typeof setupSchema>;

/** Reads what was remembered. @returns null where that is no setup */
export function readSetup(text: string | null): SetupRecord | null {
  try {
    return text === null ? null : (setupSchema.safeParse(JSON.parse(text)).data ?? null);
  } catch {
    return null;
  }
}
