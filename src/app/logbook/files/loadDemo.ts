import { DEMO_SEED, demoLogbook } from "../../../progress/demo/demoLogbook";
import { mergeIntoLogbook } from "../../../store/wholeLogbook";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { mergedWords } from "../../keeping/mergedWords";

/** Puts the invented school into the logbook, and says what came. */
export async function loadDemo(current: CurrentLogbook): Promise<string> {
  const merged = await mergeIntoLogbook(current.logbook, demoLogbook(DEMO_SEED, Date.now()));
  await current.settle();
  return mergedWords(merged);
}
