import { useState } from "react";
import type { ZeroingRecord } from "../../../records/records";
import { sittingOf } from "../../../records/tryOfSitting";
import { toldZeroings } from "../../../store/toldTries";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useAsked } from "../../keeping/useLogbook";
import { Select } from "../../parts/controls/Select";
import { TextTable } from "../../parts/TextTable";
import { latestZeroings, zeroingName, zeroingTable } from "../../results/zeroingTable";
import { RecordActs } from "../list/RecordActs";

interface ZeroingActsProps {
  readonly current: CurrentLogbook;
  readonly zeroings: readonly ZeroingRecord[];
}

/** One of the listed zeroings is chosen, to be given to another person or deleted. */
function ZeroingActs({ current, zeroings }: ZeroingActsProps) {
  const [id, setId] = useState("");
  const chosen = zeroings.find((one) => one.id === id);
  return (
    <details className="mt-3">
      <summary>Give or delete a zeroing</summary>
      <Select
        aria-label="Zeroing"
        value={chosen?.id ?? ""}
        choices={[["", "Choose a zeroing"], ...zeroings.map((one) => [one.id, zeroingName(one)] as const)]}
        onChoice={setId}
      />
      {chosen !== undefined && (
        <RecordActs
          current={current}
          kind="zeroings"
          record={{ ...chosen, sittingId: sittingOf(chosen) }}
          onGone={() => setId("")}
        />
      )}
    </details>
  );
}

/** The latest zeroings of one person. */
export function ZeroingList({ current, personId }: { readonly current: CurrentLogbook; readonly personId: string }) {
  const { answer } = useAsked(`zeroings ${current.version} ${personId}`, () => toldZeroings(current.logbook, personId));
  if (answer === null || answer.length === 0) return null;
  return (
    <>
      <TextTable {...zeroingTable(answer)} />
      <ZeroingActs current={current} zeroings={latestZeroings(answer)} />
    </>
  );
}
