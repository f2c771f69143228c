import { recordsOfKind } from "../../logbook/wholeLogbook";
import { DataTable } from "./charts/DataTable";
import type { CurrentLogbook } from "./currentLogbook";
import { useAsked } from "./useLogbook";
import { zeroingTable } from "./zeroingTable";

/** The latest zeroings of one person. */
export function ZeroingList({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const { answer } = useAsked(`zeroings ${current.version} ${personId}`, async () =>
    (await recordsOfKind(current.logbook, "zeroings")).filter((one) => one.personId === personId),
  );
  if (answer === null || answer.length === 0) return null;
  return <DataTable table={zeroingTable(answer)} />;
}
