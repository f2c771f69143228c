import { drawTrouble } from "../../handover/trouble/drawTrouble";
import { TroubleError } from "../../handover/trouble/troubleError";
import { SHIPPED_PROFILES } from "../../lock/shippedProfiles";
import type { JobRecord } from "../jobRecord";
import { detailsOf } from "./jobDetails";

/**
 * Whether a diagnosis has another defect than its lock, its pool and its seed lead to, as a sitting's record is checked.
 *
 * Only the kind: where and how large it is may be drawn otherwise by another version. What has no seed, or a lock that is not
 * known here, cannot be told.
 */
export function hasOtherDefect(job: Pick<JobRecord, "kind" | "details" | "profileId" | "ownProfile">): boolean {
  const profile = SHIPPED_PROFILES.find(({ id }) => id === job.profileId);
  const found = job.kind === "trouble" && job.ownProfile === undefined ? detailsOf(job) : null;
  if (profile === undefined || found?.kind !== "trouble") return false;
  const { pool, seed, truth } = found.details;
  try {
    return drawTrouble(profile, pool, seed).trouble.kind !== truth.kind;
  } catch (error) {
    // None of the pool fits the lock: then it can have had none.
    if (error instanceof TroubleError) return true;
    throw error;
  }
}
