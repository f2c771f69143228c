import type { Sha256 } from "../../drill/sittingRecord";
import type { SittingRecord } from "../../logbook/records";
import { checkRecordFile } from "../sittings/recordFile";

async function checkOf({ body, state }: SittingRecord, sha256: Sha256, appVersion: string): Promise<string> {
  if (state === "running") return "not ended";
  try {
    const { problems, unheld } = await checkRecordFile(JSON.stringify(body), sha256, appVersion);
    if (problems.length > 0) return "does not check";
    return unheld.length === 0 ? "sound" : "of another version";
  } catch {
    return "cannot be checked";
  }
}

/**
 * Checks the records of sittings.
 *
 * @param appVersion - the version that checks
 * @returns a word for each, by id
 */
export async function sittingChecks(
  sittings: readonly SittingRecord[],
  sha256: Sha256,
  appVersion: string,
): Promise<ReadonlyMap<string, string>> {
  return new Map(
    await Promise.all(sittings.map(async (one) => [one.id, await checkOf(one, sha256, appVersion)] as const)),
  );
}
