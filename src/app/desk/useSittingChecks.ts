import { SHIPPED_SHEETS } from "../../drill/sheet/shippedSheets";
import type { LogbookContents } from "../../records/logbookContents";
import type { SittingRecord } from "../../records/records";
import { ownSheets } from "../keeping/sheets/ownSheets";
import { useAsked } from "../keeping/useLogbook";
import { APP_VERSION } from "../parts/page/appVersion";
import { sittingChecks } from "./sittingChecks";

/** What checking the records of sittings came to, by the sitting's id; null before it is known. */
export function useSittingChecks({ records, traces }: LogbookContents, sittings: readonly SittingRecord[]) {
  const key = sittings.map(({ id, updatedAt }) => `${id} ${updatedAt}`).join();
  return useAsked(key, async () => {
    const names = new Map(records.people.map(({ id, name }) => [id, name]));
    const sheets = [...(await ownSheets()), ...SHIPPED_SHEETS];
    return sittingChecks(sittings, { appVersion: APP_VERSION, traces, names, sheets });
  }).answer;
}
