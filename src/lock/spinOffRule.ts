import type { Profile } from "./profile";

/** How a lock is secured once its bolt is thrown, and who says so. */
export interface SpinOffRule {
  /** Whole turns in one direction; an integer >= 1. */
  readonly turns: number;
  readonly source: string;
}

/** Turns in one direction that a published source asks for, whatever the number of wheels. */
const AT_LEAST = 4;
const HANDBOOK = "MIL-HDBK-1013/8 (1989), section 2, item e.8; also NAVEDTRA 14244";
const COMMON_PRACTICE = "common practice, no source";

/**
 * How many turns in one direction secure a lock.
 *
 * A wheel pack: at least four full turns (MIL-HDBK-1013/8, item e.8; NAVEDTRA 14244). It takes one turn for each wheel
 * to pick all of them up and one more to carry the first one on, so a pack of more than three wheels needs more than
 * the handbook's four. An encoder lock has no wheels: one turn, which is common practice and has no source.
 */
export function spinOffRule({ kind, procedure }: Pick<Profile, "kind" | "procedure">): SpinOffRule {
  if (kind === "dial-encoder") return { turns: 1, source: COMMON_PRACTICE };
  const wheels = procedure.length;
  return wheels < AT_LEAST
    ? { turns: AT_LEAST, source: HANDBOOK }
    : { turns: wheels + 1, source: `${HANDBOOK}; more than four turns for ${wheels} wheels: ${COMMON_PRACTICE}` };
}
