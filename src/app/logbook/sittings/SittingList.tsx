import type { SittingRecord } from "../../../records/records";
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
      <th scope="row">
        <button
          type="button"
          className="button slim text-left whitespace-nowrap phone:whitespace-normal"
          aria-pressed={isChosen}
          onClick={onChoose}
        >
          <span className="visually-hidden">Look at the sitting of </span>
          {row.day} <b>{row.clock}</b>
        </button>
      </th>
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
    <table className="attempt-list mt-3">
      <caption className="visually-hidden">Sittings, latest first</caption>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">Sheet</th>
          <th scope="col">Verdict and tries</th>
        </tr>
      </thead>
      <tbody>
        {sittings.map((sitting) => (
          <Line
            key={sitting.id}
            sitting={sitting}
            isChosen={sitting.id === chosenId}
            onChoose={() => onChoose(sitting)}
          />
        ))}
      </tbody>
    </table>
  );
}
