import { Fragment } from "react";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { useIsPrinting } from "../../parts/page/useIsPrinting";
import { AttemptLine } from "./AttemptLine";
import type { AttemptWindow } from "./attemptWindow";
import { useScrolledRows } from "./useScrolledRows";
import "./attemptList.css";

interface AttemptListProps {
  readonly attempts: AttemptWindow;
  readonly count: number;
  readonly chosenId: string | null;
  readonly onChoose: (attempt: AttemptRecord) => void;
}

/** Room of rows that are not drawn. */
function Gap({ height }: { readonly height: number }) {
  return (
    // biome-ignore lint/a11y/noAriaHiddenOnFocusable: this row cannot have the focus, and is none to be counted
    <tr aria-hidden="true" className="attempt-gap">
      <td colSpan={4} style={{ height }} />
    </tr>
  );
}

/** The attempts of a filter, latest first; each can be replayed. Only those in view, and a few beside, are drawn. */
export function AttemptList({ attempts, count, chosenId, onChoose }: AttemptListProps) {
  const rows = useScrolledRows(attempts, count);
  const isPrinting = useIsPrinting();
  const lineOf = (place: number) => {
    const attempt = attempts.at(place);
    return (
      <AttemptLine
        place={place}
        attempt={attempt}
        isUntold={attempts.isUntold(place)}
        isChosen={attempt !== null && attempt.id === chosenId}
        isTabStop={place === rows.tabStop}
        onChoose={onChoose}
      />
    );
  };
  return (
    <div
      className="attempt-scroll relative max-h-[max(300px,calc(100dvh-350px))] mt-3 overflow-y-auto ruled-below phone:max-h-[max(300px,62dvh)] print:max-h-none print:overflow-visible"
      ref={rows.region}
      style={rows.sizes}
    >
      <table className="attempt-list table-fixed" aria-rowcount={count + 1} {...rows.hands}>
        <caption className="visually-hidden">
          Attempts, latest first. The arrow keys, Page Up, Page Down, Home and End go from one to another.
        </caption>
        <thead>
          <tr aria-rowindex={1}>
            <th scope="col">When</th>
            <th scope="col">Combination and lock</th>
            <th scope="col">Result and faults</th>
            <th scope="col">Stop errors, time</th>
          </tr>
        </thead>
        <tbody>
          {isPrinting
            ? attempts.held.map((place) => <Fragment key={place}>{lineOf(place)}</Fragment>)
            : rows.drawn.map(({ place, gap }) => (
                <Fragment key={place}>
                  {gap > 0 && <Gap height={gap} />}
                  {lineOf(place)}
                </Fragment>
              ))}
          {!isPrinting && rows.rest > 0 && <Gap height={rows.rest} />}
        </tbody>
      </table>
      {isPrinting && attempts.held.length < count && (
        <p>
          {attempts.held.length} of {count} attempts are printed: those that were looked at.
        </p>
      )}
    </div>
  );
}
