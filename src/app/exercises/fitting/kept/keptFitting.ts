import * as z from "zod/mini";
import type { FitCheck } from "../../../../fitting/fitCheck";
import type { FittingAct } from "../../../../fitting/fittingAct";
import { fitCheckSchema, fittingActSchema, offsetSchema } from "../../../../fitting/fittingActSchema";
import { SHIPPED_PROFILES } from "../../../../lock/shippedProfiles";
import { keysUnder, pageStore, storedText, storeText, type TextStore } from "../../../parts/storage/pageStore";
import { setTextAside } from "../../../parts/storage/setAside";

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
export const FITTING_KEY = "gatefall.fitting.";

/** Stores a fitting. @returns whether it is stored now */
export const keepFitting = (kept: KeptFitting, store: TextStore = pageStore()): boolean =>
  storeText(FITTING_KEY + kept.profile, JSON.stringify(kept), store);

/** Forgets the fitting of a lock. */
export const forgetFitting = (profileId: string): boolean => storeText(FITTING_KEY + profileId, null);

/** Reads a stored fitting; null where it cannot be read. */
function readKept(text: string): KeptFitting | null {
  try {
    return keptSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** What was found of a lock's fitting. */
interface RecalledFitting {
  readonly kept: KeptFitting | null;
  /** What could not be read, and what became of it; null where nothing was wrong. */
  readonly problem: string | null;
}

/** Sets aside what cannot go on. @returns what to say */
export function setAsideFitting(profileId: string): string {
  const isCopied = setTextAside(FITTING_KEY + profileId);
  const copy = isCopied ? "A copy is kept in this browser." : "There is no room for a copy.";
  return `The fitting that this browser saved cannot be read. ${copy} This is a new door: begin with the tray.`;
}

/** Looks for the fitting of a lock. */
export function recallFitting(profileId: string): RecalledFitting {
  const text = storedText(FITTING_KEY + profileId);
  const kept = text === null ? null : readKept(text);
  const isRead = text === null || kept?.profile === profileId;
  return isRead ? { kept, problem: null } : { kept: null, problem: setAsideFitting(profileId) };
}

/** The lock whose fitting was worked on last; null where there is none. */
export function lastFitted(): string | null {
  try {
    const texts = keysUnder(FITTING_KEY, pageStore()).map((key) => storedText(key));
    const kept = texts.flatMap((text) => readKept(text ?? "") ?? []);
    return kept.sort((one, other) => other.keptAt - one.keptAt)[0]?.profile ?? null;
  } catch {
    return null;
  }
}
