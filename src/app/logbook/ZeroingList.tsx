import type { ZeroingRecord } from "../../logbook/records";
import { recordsOfKind } from "../../logbook/wholeLogbook";
import { clockText, dayText } from "./attemptRows";
import { DataTable } from "./charts/DataTable";
import type { CurrentLogbook } from "./currentLogbook";
import type { TableModel } from "./figures/figureModel";
import { useAsked } from "./useLogbook";

const OUTCOMES: Readonly<Record<ZeroingRecord["outcome"], string>> = {
  "zero-set": "Zero set",
  "not-set": "Not set",
  "broken-off": "Broken off",
};

const MOST = 10;

function tableOf(zeroings: readonly ZeroingRecord[]): TableModel {
  return {
    caption: "Zeroings, latest first",
    head: ["when", "result", "readings accepted", "refused"],
    rows: zeroings
      .toSorted((a, b) => b.startedAt - a.startedAt)
      .slice(0, MOST)
      .map(({ startedAt, outcome, readings }) => {
        const refused = readings.filter(({ refusal }) => refusal !== undefined).length;
        return [
          `${dayText(startedAt)} ${clockText(startedAt)}`,
          OUTCOMES[outcome],
          `${readings.length - refused}`,
          `${refused}`,
        ];
      }),
  };
}

/** The latest zeroings of one person. */
export function ZeroingList({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const { answer } = useAsked(`zeroings ${current.version} ${personId}`, async () =>
    (await recordsOfKind(current.logbook, "zeroings")).filter((one) => one.personId === personId),
  );
  if (answer === null || answer.length === 0) return null;
  return <DataTable table={tableOf(answer)} />;
}
