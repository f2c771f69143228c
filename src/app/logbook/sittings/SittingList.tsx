import type { SittingRecord } from "../../../records/records";
import { RecordList, When } from "../list/RecordList";
import { shownStanding, sittingRowOf } from "./sittingRows";

interface LineProps {
  readonly sitting: SittingRecord;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

function Line({ sitting, isChosen, onChoose }: LineProps) {
  const row = sittingRowOf(sitting);
  return (
    <tr>
      <When what="sitting" day={row.day} clock={row.clock} {...{ isChosen, onChoose }} />
      <td>
        {row.title}
        {row.tags !== "" && <small className="block text-fine">{row.tags}</small>}
      </td>
      <td>
        <span className={row.isWrong || shownStanding(sitting) === "failed" ? "missed font-semibold" : ""}>
          {row.standing}
        </span>
        <small className="block text-fine">{row.tries}</small>
      </td>
    </tr>
  );
}

interface SittingListProps {
  readonly sittings: readonly SittingRecord[];
  readonly chosenId: string | null;
  readonly onChoose: (sitting: SittingRecord) => void;
}

/** A page of sittings, latest first. */
export function SittingList({ sittings, chosenId, onChoose }: SittingListProps) {
  return (
    <RecordList what="Sittings" headings={["Sheet", "Verdict and tries"]}>
      {sittings.map((sitting) => (
        <Line
          key={sitting.id}
          sitting={sitting}
          isChosen={sitting.id === chosenId}
          onChoose={() => onChoose(sitting)}
        />
      ))}
    </RecordList>
  );
}
