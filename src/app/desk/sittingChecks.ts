import type { Sha256 } from "../../drill/sittingRecord";
import type { SittingRecord } from "../../logbook/records";
import { checkRecordFile } from "../sittings/recordFile";

async function checkOf({ body, state }: SittingRecord, sha256: Sha256): Promise<string> {
  if (state === "running") return "not ended";
  try {
    const { problems } = await checkRecordFile(JSON.stringify(body), sha256);
    return problems.length === 0 ? "sound" : "does not check";
  } catch {
    return "cannot be checked";
  }
}

/** Checks the records of sittings against their hashes. @returns a word for each, by id */
export async function sittingChecks(
  sittings: readonly SittingRecord[],
  sha256: Sha256,
): Promise<ReadonlyMap<string, string>> {
  return new Map(await Promise.all(sittings.map(async (one) => [one.id, await checkOf(one, sha256)] as const)));
}
