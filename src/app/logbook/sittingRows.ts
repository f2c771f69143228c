import type { SittingRecord } from "../../logbook/records";
import { type SittingStanding, standingOf } from "../../logbook/sittingQueries";
import { clockText, dayText } from "./attemptRows";

/** How a sitting stands, in words. */
export const STANDINGS: Readonly<Record<SittingStanding, string>> = {
  running: "Under way",
  "broken-off": "Broken off",
  passed: "Passed",
  failed: "Not passed",
  "not shown yet": "Not shown yet",
};

/** One line of the list of sittings. */
export interface SittingRow {
  readonly day: string;
  readonly clock: string;
  readonly title: string;
  readonly tags: string;
  readonly standing: string;
  readonly tries: string;
}

/** What of a sitting's body is told in a list; the body is checked where a result is made of it. */
interface Told {
  readonly record?: { readonly tries?: unknown } | null;
  readonly progress?: { readonly tries?: unknown } | null;
}

const isLost = (one: unknown) => typeof one === "object" && one !== null && "isBrokenOff" in one && one.isBrokenOff;

/** "4 tries", "4 tries, 1 lost". */
function triesText({ body }: SittingRecord): string {
  const told = (typeof body === "object" && body !== null ? body : {}) as Told;
  const tries = told.record?.tries ?? told.progress?.tries;
  if (!Array.isArray(tries)) return "–";
  const lost = tries.filter(isLost).length;
  const made = tries.length === 1 ? "1 try" : `${tries.length} tries`;
  return lost === 0 ? made : `${made}, ${lost} lost`;
}

/** Whether a sitting has a result that can be opened. */
export const hasResult = ({ state, body }: SittingRecord): boolean =>
  state !== "running" && typeof body === "object" && body !== null && "record" in body;

/** A sitting as a line of the list. */
export function sittingRowOf(sitting: SittingRecord): SittingRow {
  return {
    day: dayText(sitting.startedAt),
    clock: clockText(sitting.startedAt),
    title: sitting.title === "" ? "Untitled sheet" : sitting.title,
    tags: (sitting.tags ?? []).join(", "),
    standing: STANDINGS[standingOf(sitting)],
    tries: triesText(sitting),
  };
}
