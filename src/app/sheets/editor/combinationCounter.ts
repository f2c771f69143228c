import { parseRules } from "../../../drill/combinations/parseRules";
import type { CombinationRules, Profile } from "../../../lock/profile";
import { type CountMessage, type CountTask, countOf } from "./countMessages";

/** What of a web worker is used. */
export type CountingWorker = Pick<Worker, "postMessage" | "terminate" | "onmessage" | "onerror">;

const newWorker = (): CountingWorker =>
  new Worker(new URL("./combinationCounter.worker.ts", import.meta.url), { type: "module" });

/** How long counting may take before it is given up, milliseconds. */
const PATIENCE_MS = 5000;

const TOO_LONG = "Not counted: these rules take more than 5 s to count. The sheet can be used all the same.";
const NO_SENSE: CountMessage = { kind: "no-sense" };

const makesSense = (rules: CombinationRules): boolean => {
  try {
    parseRules(rules);
    return true;
  } catch {
    return false;
  }
};

/**
 * Counts the combinations that rules leave, beside the page.
 *
 * @param tell - hears once what it came to; not after the counting was ended
 * @param startWorker - starts what counts; a browser's worker if left out
 * @returns ends the counting
 */
export function countBeside(
  profile: Profile,
  rules: CombinationRules,
  tell: (message: CountMessage) => void,
  startWorker: () => CountingWorker = newWorker,
): () => void {
  if (!makesSense(rules)) {
    tell(NO_SENSE);
    return () => {};
  }
  const worker = startWorker();
  const end = () => {
    clearTimeout(timer);
    worker.terminate();
  };
  const answer = (message: CountMessage) => {
    end();
    tell(message);
  };
  const timer = setTimeout(() => answer({ kind: "not-counted", says: TOO_LONG }), PATIENCE_MS);
  worker.onmessage = ({ data }: MessageEvent<CountMessage>) => answer(data);
  worker.onerror = () => answer(countOf({ profile, rules }));
  const task: CountTask = { profile, rules };
  worker.postMessage(task);
  return end;
}
