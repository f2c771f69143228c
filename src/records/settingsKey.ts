import type { AttemptRecord } from "./attemptRecord";
import { plainCodes } from "./conditionCode";

/** The exact settings of an attempt as one text: attempts with the same text may be compared for a best. */
export function settingsKey({
  profileId,
  exercise,
  help,
  conditions,
}: Pick<AttemptRecord, "profileId" | "exercise" | "help" | "conditions">): string {
  return JSON.stringify([profileId, exercise, help, plainCodes(conditions).toSorted()]);
}
