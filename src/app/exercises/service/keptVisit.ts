import * as z from "zod/mini";
import { oneOf, shortList, strict, text, whole, within } from "../../../lock/fieldSchemas";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { HELP_LEVELS } from "../../../records/attemptRecord";
import { EMPTY_RECORD, type VisitAct, type VisitRecord } from "../../../service/visitAct";
import { visitActSchema, visitRecordSchema } from "../../../service/visitActSchema";
import type { Chance } from "../../../statistics/chance";
import { recallWork, type WorkKind } from "../../parts/storage/keptWork";
import { VisitSession } from "./visitSession";
import { type VisitSetup, visitSetupOf } from "./visitSetup";

/** Where the visit under way is stored. */
export const VISIT_KEY = "gatefall.service-visit";

/** More than any visit has: a text that holds more was not written here. */
const MOST_ACTS = 5000;

const keptSchema = strict({
  version: z.literal(1),
  setup: strict({
    lock: text(80).check(z.refine((id) => id === "any" || SHIPPED_PROFILES.some((one) => one.id === id))),
    seed: whole(0, Number.MAX_SAFE_INTEGER),
    help: oneOf(HELP_LEVELS),
  }),
  worked_ms: within(0, 1e10, "milliseconds"),
  acts: shortList(visitActSchema, MOST_ACTS),
  // A visit that was stored before this was has none.
  draft: z.optional(visitRecordSchema),
});

/** A visit under way, act by act. */
export interface KeptVisit {
  readonly version: 1;
  readonly setup: VisitSetup;
  /** How long it has taken so far. */
  readonly worked_ms: number;
  readonly acts: readonly VisitAct[];
  /** The record as it is marked. */
  readonly draft?: VisitRecord | undefined;
}

/** A visit under way, as a kind of work that is stored. */
export const VISIT_WORK: WorkKind<KeptVisit> = {
  noun: "service visit",
  page: "Service visit",
  instead: "This is a new visit. Start at the door.",
  read: (value) => keptSchema.parse(value),
};

/** Whether a visit has begun, if only with its record, and is not over. */
export const isVisitUnderWay = ({ visit, tried, draft }: VisitSession): boolean =>
  (tried.length > 0 || draft !== EMPTY_RECORD) && !visit.isOver;

/** A visit as it is stored. @param steady_ms - now, by a clock that only goes on */
export const keptVisitOf = (session: VisitSession, steady_ms: number): KeptVisit => ({
  version: 1,
  setup: session.setup,
  worked_ms: session.workedBy(steady_ms),
  acts: session.tried,
  draft: session.draft,
});

/** Whether an address asks for a visit: for its lock, its number and its help, where it names them. */
function isAskedFor({ lock, seed, help }: VisitSetup, query: URLSearchParams): boolean {
  const isOf = (name: string, value: string) => [null, value].includes(query.get(name));
  return isOf("profile", lock) && isOf("seed", `${seed}`) && isOf("help", help);
}

/**
 * The visit that goes on here, or a new one.
 *
 * @param query - of the address
 * @param steady_ms - now, by a clock that only goes on
 */
export function firstVisit(query: URLSearchParams, chance: Chance, steady_ms: number) {
  const { kept, problem } = recallWork(VISIT_KEY, VISIT_WORK);
  if (kept === null || !isAskedFor(kept.setup, query)) {
    return { session: new VisitSession(visitSetupOf(query, chance), chance), problem };
  }
  const session = new VisitSession(kept.setup, chance);
  session.resume(kept.acts);
  if (kept.draft !== undefined) session.write(kept.draft);
  // Time runs from the first act on.
  if (kept.acts.length > 0) session.begunAt = steady_ms - kept.worked_ms;
  return { session, problem };
}
