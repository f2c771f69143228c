import { DEMO_SEED, demoLogbook } from "../../logbook/demoLogbook";
import { mergeIntoLogbook } from "../../logbook/wholeLogbook";
import type { CurrentLogbook } from "./currentLogbook";
import { mergedWords } from "./mergedWords";

/** Puts the invented school into the logbook, and says what came. */
export async function loadDemo(current: CurrentLogbook): Promise<string> {
  const merged = await mergeIntoLogbook(current.logbook, demoLogbook(DEMO_SEED, Date.now()));
  await current.settle();
  return mergedWords(merged);
}
