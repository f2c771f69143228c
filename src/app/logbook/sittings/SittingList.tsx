import type { SittingRecord } from "../../../records/records";
import { RecordList, When } from "../list/RecordList";
import { shownStanding, sittingRowOf } from "./sittingRows";

interface SittingListProps {
  readonly sittings: readonly SittingRecord[];
  readonly chosenId: string | null;
  readonly onChoose: (sitting: SittingRecord) => void;
}

/** A page of sittings, latest first. */
export function SittingList({ sittings, chosenId, onChoose }: SittingListProps) {
  return (
    <RecordList what="Sittings" headings={["Sheet", "Verdict and tries"]}>
      {sittings.map((sitting) => {
        const { day, clock, title, tags, isWrong, standing, tries } = sittingRowOf(sitting);
        const isMissed = isWrong || shownStanding(sitting) === "failed";
        const { id } = sitting;
        return (
          <tr key={id}>
            <When what="sitting" {...{ day, clock }} isChosen={id === chosenId} onChoose={() => onChoose(sitting)} />
            <td>
              {title}
              {tags !== "" && <small className="block text-fine">{tags}</small>}
            </td>
            <td>
              <span className={isMissed ? "missed font-semibold" : ""}>{standing}</span>
              <small className="block text-fine">{tries}</small>
            </td>
          </tr>
        );
      })}
    </RecordList>
  );
}
