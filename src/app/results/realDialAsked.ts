import type { Sheet } from "../../drill/sheet/sheet";

const rules = ({ stations }: Sheet) => stations.map((one) => ("turnedBy" in one ? (one.turnedBy ?? "any") : "any"));

/** Whether at some station nothing but a real dial may turn. */
export const asksForRealDial = (sheet: Sheet): boolean => rules(sheet).includes("real-dial");

/** What whoever sits a sheet does about a real dial before the clock runs, a sentence; null where its sheet says nothing of it. */
export function realDialWords(sheet: Sheet): string | null {
  if (asksForRealDial(sheet)) return "Set up the real dial that this sheet asks for before you start the clock.";
  return rules(sheet).includes("not-coarse") ? "You may turn a real dial. Set it up before you start the clock." : null;
}
