import type { SittingRecord } from "../../../records/records";
import { type StatedSitting, statedSitting } from "../../../records/xapi/sittingStatements";
import { APP_VERSION } from "../../parts/page/appVersion";

/** Lets the page draw and answer before the work goes on. */
const nextTask = () => new Promise<void>((done) => setTimeout(done, 0));

/**
 * Checks sittings one by one, so that the page goes on meanwhile: to replay the tries of a long one takes a moment.
 *
 * @param say - told how far it is, a sentence
 * @returns those whose record checks
 */
export async function statedInSlices(
  sittings: readonly SittingRecord[],
  say: (progress: string) => void,
): Promise<StatedSitting[]> {
  const stated: StatedSitting[] = [];
  for (const [index, sitting] of sittings.entries()) {
    say(`Checking sitting ${index + 1} of ${sittings.length} …`);
    await nextTask();
    const one = statedSitting(sitting, APP_VERSION);
    if (one !== null) stated.push(one);
  }
  return stated;
}
