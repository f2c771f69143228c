import type { Attempt } from "../../dialing/attempt";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { AttemptCondition } from "../attemptConditions";
import type { AttemptOutcome } from "../attemptOutcome";
import type { AttemptRecord } from "../attemptRecord";
import { conditionCode } from "../conditionCode";

/** An attempt as it is kept, but for the person, who is looked up later. */
export type AttemptNote = Omit<AttemptRecord, "personId">;

/** What the lock under the hand does not tell: when, what was asked, how much help there was, and what made it harder. */
export interface AttemptFrame
  extends Pick<
    AttemptNote,
    | "id"
    | "createdAt"
    | "updatedAt"
    | "startedAt"
    | "duration_ms"
    | "exercise"
    | "help"
    | "sittingId"
    | "estimate"
    | "sources"
    | "doubts"
  > {
  readonly conditions: readonly AttemptCondition[];
}

/**
 * An attempt as it is kept.
 *
 * @param came - what it came to, with `isLate` where a station's time ran out, `isNotAdmitted` where it does not admit the source, `isDoubtRefused` where it counts no doubtful try
 */
export function attemptNote(
  { conditions, ...frame }: AttemptFrame,
  { profile, combination }: Pick<Attempt, "profile" | "combination">,
  came: AttemptOutcome & Pick<AttemptNote, "isLate" | "isNotAdmitted" | "isDoubtRefused">,
): AttemptNote {
  return {
    ...frame,
    startedAt: Math.round(frame.startedAt),
    profileId: profile.id,
    ...(SHIPPED_PROFILES.includes(profile) ? {} : { ownProfile: JSON.parse(JSON.stringify(profile)) }),
    combination: [...combination],
    conditions: conditions.map(conditionCode),
    tags: [],
    ...came,
  };
}
