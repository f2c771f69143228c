import * as z from "zod/mini";
import { oneOf, shortList, strict, text, whole, within } from "../../../lock/fieldSchemas";
import { SHIPPED_PROFILES } from "../../../lock/shippedProfiles";
import { HELP_LEVELS } from "../../../records/attemptRecord";
import type { VisitAct } from "../../../service/visitAct";
import { visitActSchema } from "../../../service/visitActSchema";
import { storedText, storeText } from "../../parts/storage/pageStore";
import { setTextAside } from "../../parts/storage/setAside";
import type { VisitSetup } from "./visitSetup";

const KEY = "gatefall.service-visit";

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
});

/** A visit under way, act by act. */
export interface KeptVisit {
  readonly setup: VisitSetup;
  /** How long it has taken so far. */
  readonly worked_ms: number;
  readonly acts: readonly VisitAct[];
}

/** What was found in this browser. */
export interface RecalledVisit {
  readonly kept: KeptVisit | null;
  /** What could not be read of it and what to do, or null. */
  readonly problem: string | null;
}

/** Keeps a visit as text of the page; null takes it away. @returns whether it is stored */
export const keepVisit = (kept: KeptVisit | null): boolean =>
  storeText(KEY, kept === null ? null : JSON.stringify({ version: 1, ...kept }));

function read(stored: string): KeptVisit | null {
  try {
    const { version: _, ...kept } = keptSchema.parse(JSON.parse(stored));
    return kept;
  } catch {
    return null;
  }
}

/** Whether an address asks for a visit: for its lock, its number and its help, where it names them. */
function isAskedFor({ lock, seed, help }: VisitSetup, query: URLSearchParams): boolean {
  const isOf = (name: string, value: string) => [null, value].includes(query.get(name));
  return isOf("profile", lock) && isOf("seed", `${seed}`) && isOf("help", help);
}

/** The visit that goes on here. What cannot be read is set aside, and told. @param query - of the address */
export function recallVisit(query: URLSearchParams): RecalledVisit {
  const stored = storedText(KEY);
  if (stored === null) return { kept: null, problem: null };
  const kept = read(stored);
  if (kept !== null) return { kept: isAskedFor(kept.setup, query) ? kept : null, problem: null };
  const copy = setTextAside(KEY)
    ? "A copy is kept in this browser."
    : "There is no room for a copy: what you do next replaces it.";
  return {
    kept: null,
    problem: `The service visit that this browser saved cannot be read. ${copy} This is a new visit. Start at the door.`,
  };
}
