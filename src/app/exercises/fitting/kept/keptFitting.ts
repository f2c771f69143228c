import * as z from "zod/mini";
import type { FitCheck } from "../../../../fitting/fitCheck";
import type { FittingAct } from "../../../../fitting/fittingAct";
import { fitCheckSchema, fittingActSchema, offsetSchema } from "../../../../fitting/fittingActSchema";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { readWork, type WorkKind } from "../../../parts/storage/keptWork";
import { safeKeys, safeText } from "../../../parts/storage/safeTexts";

/** More than any fitting has: a text that holds more was not written here. */
const MOST = 5000;
/** Of any dial. */
const MOST_GRADUATIONS = 1000;
/** Some months, milliseconds: longer than anybody works on one door. */
const LONGEST_ms = 1e10;
const help = z.enum(["full", "counts", "silent"]);
const count = z.number().check(z.int(), z.minimum(0), z.maximum(MOST));

const keptSchema = z.object({
  version: z.literal(1),
  profile: z.enum(SHIPPED_PROFILES.map(({ id }) => id)),
  door: z.object({ slotAt: z.number().check(z.minimum(0), z.maximum(MOST_GRADUATIONS)), bend: offsetSchema }),
  acts: z.array(fittingActSchema).check(z.maxLength(MOST)),
  /** Checks: after how many acts, and the seed of its instrument's spread. */
  checks: z
    .array(z.object({ after: count, check: fitCheckSchema, seed: z.int().check(z.minimum(0)) }))
    .check(z.maxLength(MOST)),
  help,
  /** The most help that was had. */
  helpHad: help,
  /** Whether the debrief is open, and whether it was ever: then the fitting is in the logbook. */
  isDeclared: z.boolean(),
  wasDeclared: z.boolean(),
  /** Time spent on it, and when it was stored, milliseconds; the latter since 1970. */
  worked_ms: z.number().check(z.minimum(0), z.maximum(LONGEST_ms)),
  keptAt: z.number(),
});

/** A fitting under way, as it is stored: the door, and all that was done there. */
export interface KeptFitting extends Readonly<Omit<z.infer<typeof keptSchema>, "acts" | "checks">> {
  readonly acts: readonly FittingAct[];
  readonly checks: readonly { readonly after: number; readonly check: FitCheck; readonly seed: number }[];
}

/** Each lock has a fitting of its own under way. */
const FITTINGS = "gatefall.fitting.";

/** Where the fitting of a lock is stored. */
export const fittingKey = (profileId: string): string => FITTINGS + profileId;

/** A fitting under way, as a kind of work that is stored. */
export const FITTING_WORK: WorkKind<KeptFitting> = {
  noun: "fitting",
  page: "Fitting",
  instead: "This is a new door: begin with the tray.",
  read: (value) => keptSchema.parse(value),
};

/** The lock whose fitting was worked on last; null where there is none. */
export function lastFitted(): string | null {
  const kept = safeKeys(FITTINGS).flatMap((key) => readWork(safeText(key), FITTING_WORK) ?? []);
  return kept.sort((one, other) => other.keptAt - one.keptAt)[0]?.profile ?? null;
}
