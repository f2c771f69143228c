import { toldZeroings } from "../../store/toldTries";
import { DataTable } from "./charts/DataTable";
import type { CurrentLogbook } from "./currentLogbook";
import { useAsked } from "./useLogbook";
import { zeroingTable } from "./zeroingTable";

/** The latest zeroings of one person. */
export function ZeroingList({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const { answer } = useAsked(`zeroings ${current.version} ${personId}`, () => toldZeroings(current.logbook, personId));
  if (answer === null || answer.length === 0) return null;
  return <DataTable table={zeroingTable(answer)} />;
}
