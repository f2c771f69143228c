import type { DialWeight } from "../../dialing/hand/dialFeel";
import type { Graduations } from "../../lock/dial";
import type { Condition, Station } from "./sheet";

/** What holds during one try. */
export interface TryConditions {
  /** How far the opening index stands off its true place, left positive. */
  readonly indexOffset: Graduations;
  /** Play between dial and cam. */
  readonly lostMotion: Graduations;
  /** Standard deviation of what is added to each reading. */
  readonly noise: Graduations;
  readonly dial: DialWeight;
  /** Whether the cutaway may be shown. */
  readonly cutaway: boolean;
}

const USUAL: TryConditions = { indexOffset: 0, lostMotion: 0, noise: 0, dial: "usual", cutaway: true };

const part = (condition: Condition): Partial<TryConditions> => {
  switch (condition.kind) {
    case "index-offset":
      return { indexOffset: condition.size };
    case "lost-motion":
      return { lostMotion: condition.size };
    case "noise":
      return { noise: condition.size };
    case "heavy-dial":
      return { dial: "heavy" };
    case "light-dial":
      return { dial: "light" };
    case "no-cutaway":
      return { cutaway: false };
  }
};

/**
 * The conditions of one try: those whose first repetition has come, the later in the list over the earlier.
 *
 * @param repetition - counted from 1
 */
export function conditionsAt({ conditions = [] }: Pick<Station, "conditions">, repetition: number): TryConditions {
  const holding = conditions.filter(({ from = 1 }) => from <= repetition);
  return Object.assign({}, USUAL, ...holding.map(part));
}
