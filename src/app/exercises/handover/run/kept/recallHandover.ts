import type { Milliseconds } from "../../../../../lock/dial";
import type { KeptRun, MarkedRun, RunMark } from "../session/keptRun";
import { recallRun } from "../session/keptRun";
import { runToGoOn, type StoredRun } from "./runToGoOn";

/** No screen waits longer than this for the database, milliseconds. */
const WAIT: Milliseconds = 5000;

async function storedRuns(): Promise<readonly StoredRun[]> {
  const tooLate = new Promise<readonly StoredRun[]>((resolve) => setTimeout(() => resolve([]), WAIT));
  const asked = import("../../../../keeping/keep").then(({ handoverRuns }) => handoverRuns());
  return Promise.race([asked.catch(() => []), tooLate]);
}

/** The handover that goes on here, and what could not be read of it. */
export interface RecalledHandover {
  readonly kept: KeptRun | null;
  readonly mark: RunMark | null;
  readonly problem: string | null;
}

/** Looks in the page's text and in the database for the handover that goes on. @param isWanted - by the address */
export async function recallHandover(isWanted: (run: MarkedRun) => boolean): Promise<RecalledHandover> {
  const { kept, mark, problem } = recallRun();
  const text = kept === null || mark === null ? null : { kept, mark };
  const found = runToGoOn(text, await storedRuns(), isWanted);
  return { kept: found?.kept ?? null, mark: found?.mark ?? null, problem };
}
