import * as z from "zod/mini";
import type { FitCheck } from "../../../../fitting/fitCheck";
import { FIT_FAULTS, type FitFault } from "../../../../fitting/fitFaultCode";
import { fitCheckSchema } from "../../../../fitting/fittingActSchema";
import { oneOf, shortList, whole, within } from "../../../../lock/fieldSchemas";
import { SHIPPED_PROFILES, shippedProfile } from "../../../../lock/shippedProfiles";
import { HELP_LEVELS, type HelpLevel } from "../../../../records/attemptRecord";
import type { Chance } from "../../../../statistics/chance";
import { drawSeed } from "../../../../statistics/drawSeed";
import { recallWork, type WorkKind } from "../../../parts/storage/keptWork";
import { InspectionSession } from "./inspectionSession";

/** Where the inspection under way is stored. */
export const INSPECTION_KEY = "gatefall.inspection";

/** More than any inspection has: a text that holds more was not written here. */
const MOST_CHECKS = 5000;

const keptSchema = z.object({
  version: z.literal(1),
  profile: oneOf(SHIPPED_PROFILES.map(({ id }) => id)),
  seed: whole(0, Number.MAX_SAFE_INTEGER),
  help: oneOf(HELP_LEVELS),
  worked_ms: within(0, 1e10, "milliseconds"),
  checks: shortList(fitCheckSchema, MOST_CHECKS),
  // Of an inspection that was stored before ticks were, nothing is ticked.
  ticked: z.optional(shortList(oneOf(FIT_FAULTS), FIT_FAULTS.length)),
});

/** A fit that is being judged, as it is stored: which, and the checks in order, which show again what they showed. */
interface KeptInspection extends Readonly<Omit<z.infer<typeof keptSchema>, "checks" | "ticked">> {
  readonly checks: readonly FitCheck[];
  /** Faults that are ticked and not named yet. */
  readonly ticked?: readonly FitFault[] | undefined;
}

/** An inspection under way, as a kind of work that is stored. */
export const INSPECTION_WORK: WorkKind<KeptInspection> = {
  noun: "inspection",
  page: "Find what is wrong",
  instead: "This is another lock: begin with its checks.",
  read: (value) => keptSchema.parse(value),
};

/** Whether a fit is being judged. */
export const isJudging = ({ log, ticked, isNamed }: InspectionSession): boolean =>
  log.length + ticked.length > 0 && !isNamed;

/** An inspection as it is stored; null where there is nothing to go on with. @param steady_ms - now, by the steady clock */
export function keptInspectionOf(session: InspectionSession, steady_ms: number): KeptInspection | null {
  const { profile, seed, help, log, ticked } = session;
  if (seed === null || !isJudging(session)) return null;
  const checks = log.map(({ kind }) => kind).reverse();
  return { version: 1, profile: profile.id, seed, help, worked_ms: session.workedBy(steady_ms), checks, ticked };
}

/** What an address asks for. */
interface AskedInspection {
  readonly profile: string | null;
  readonly help: HelpLevel | null;
  readonly seed: number | null;
}

function askedBy(query: URLSearchParams): AskedInspection {
  const seed = Number(query.get("seed") ?? Number.NaN);
  return {
    profile: SHIPPED_PROFILES.find(({ id }) => id === query.get("profile"))?.id ?? null,
    help: HELP_LEVELS.find((one) => one === query.get("help")) ?? null,
    seed: Number.isSafeInteger(seed) && seed >= 0 ? seed : null,
  };
}

const isAsked = (asked: AskedInspection, { profile, help, seed }: KeptInspection): boolean =>
  [null, profile].includes(asked.profile) && [null, help].includes(asked.help) && [null, seed].includes(asked.seed);

/** Makes every check again, which shows what it showed, and ticks what was ticked. */
function goOn(session: InspectionSession, { checks, ticked = [], worked_ms }: KeptInspection, steady_ms: number): void {
  for (const check of checks) session.check(check);
  session.tick(ticked);
  // Time runs from the first check on.
  if (checks.length > 0) session.begunAt = steady_ms - worked_ms;
}

/**
 * The inspection that goes on here, or a new one.
 *
 * @param query - of the address
 * @param steady_ms - now, by a clock that only goes on
 */
export function firstInspection(query: URLSearchParams, chance: Chance, steady_ms: number) {
  const asked = askedBy(query);
  const { kept, problem } = recallWork(INSPECTION_KEY, INSPECTION_WORK);
  const goesOn = kept !== null && isAsked(asked, kept) ? kept : null;
  const { profile, help, seed } = goesOn ?? asked;
  const lock = profile === null ? SHIPPED_PROFILES[0] : shippedProfile(profile);
  const session = new InspectionSession(lock, help ?? "full", chance, seed ?? drawSeed(chance));
  if (goesOn !== null) goOn(session, goesOn, steady_ms);
  return { session, problem };
}
