import type { Attempt } from "../../dialing/attempt";
import { tellFaults, type WordedFault } from "../../dialing/faultWords";
import { judgedFaults } from "../../drill/marking/coarseStep";
import type { Graduations, Milliseconds } from "../../lock/dial";
import { worstStop } from "../../progress/stops/worstStop";
import { isCoarselyTurned } from "../../realdial/sources/isCoarselyTurned";
import type { SourceDescription } from "../../realdial/sources/sourceDescription";
import { attemptOutcome } from "../../records/attemptOutcome";

type Turned = { readonly sources?: readonly SourceDescription[] | undefined };

/** What the result table is made of. */
export interface StoodAttempt extends Pick<Attempt, "profile" | "combination"> {
  readonly reader: Pick<Attempt["reader"], "legs" | "targetOf">;
  readonly pack: Pick<NonNullable<Attempt["pack"]>, "errors"> | null;
}

/** How an attempt ended: kept for the result panel. */
export interface Outcome {
  readonly opened: boolean;
  /** From the first motion to the opening or the refusal, milliseconds. */
  readonly time_ms: Milliseconds;
  /** As they stood then: what the hand does afterwards changes neither. */
  readonly faults: readonly WordedFault[];
  readonly stood: StoodAttempt;
  /** Size of the worst stop, graduations; null where none was near its number, or where its steps were coarse. */
  readonly worstStop: Graduations | null;
}

/** An attempt as it stands now. */
function stoodNow({ profile, combination, reader, pack }: Attempt): StoodAttempt {
  const legs = reader.legs.map((leg) => ({ ...leg }));
  const errors = pack?.errors() ?? [];
  const targetOf: StoodAttempt["reader"]["targetOf"] = (leg) => reader.targetOf(leg);
  return { profile, combination, reader: { legs, targetOf }, pack: pack && { errors: () => errors } };
}

/** What an attempt comes to as it stands. @param turned - what turned its dial; coarse steps are not judged */
export function outcomeOf(attempt: Attempt, time_ms: Milliseconds, turned: Turned = {}): Outcome {
  const { opened } = attempt;
  const faults = judgedFaults(tellFaults(attempt), turned.sources);
  const worst = isCoarselyTurned(turned) ? null : worstStop(attemptOutcome(attempt).stops);
  return { opened, time_ms, faults, stood: stoodNow(attempt), worstStop: worst };
}
