import { type HandAct, keyName } from "./handActs";
import { DIAL_SOURCES } from "./sources/dialSources";

/** What keys, wheel and devices do to the dial and beside it, a sentence each. @param more - what else there is to know */
export function keysHelp(acts: readonly HandAct[], more: readonly string[] = []): readonly string[] {
  const keys = acts.map((act) => `${keyName(act)} ${act.does}.`);
  return [...DIAL_SOURCES.flatMap(({ help }) => help), keys.join(" "), ...more].filter((line) => line !== "");
}
