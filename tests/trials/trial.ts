import type { Chance } from "../../src/statistics/chance";

/** What a trial is given, and where it tells what came of it. */
export interface TrialContext {
  /** Seeded; the seed is printed, so that a trial can be made again. */
  readonly chance: Chance;
  /** Address of the built app, with a slash at the end. */
  readonly address: string;
  /** An empty folder of its own. */
  readonly folder: string;
  /** Whether there is time for another round. The first round is always made. */
  readonly hasTime: () => boolean;
  /** One round held: counted. */
  readonly pass: () => void;
  /** One round did not hold. @param what - what was seen, and with which numbers it can be made again */
  readonly fail: (what: string) => void;
}

/** Something tried over and over, with other numbers each time. */
export interface Trial {
  readonly name: string;
  /** Makes rounds until there is no time left, or all there are. An error counts as a failure and ends the trial. */
  readonly run: (context: TrialContext) => Promise<void>;
}
