import { memo } from "react";
import type { AttemptRecord } from "../../../records/attemptRecord";
import { isMiss } from "../../../store/logbookDatabase";
import { Button } from "../../parts/controls/Button";
import { type AttemptRow, attemptRowOf } from "../../results/attemptRows";

interface AttemptLineProps {
  /** Counted from 0 at the latest. */
  readonly place: number;
  /** Null while it is being read. */
  readonly attempt: AttemptRecord | null;
  readonly isUntold: boolean;
  readonly isChosen: boolean;
  /** Whether the Tab key comes to this line; the other lines are come to from it. */
  readonly isTabStop: boolean;
  readonly onChoose: (attempt: AttemptRecord) => void;
}

/** A text of one line; the whole of it is told where the pointer rests. */
function Short({ text }: { readonly text: string }) {
  return (
    <small className="block text-fine phone:line-clamp-2 phone:whitespace-normal" title={text}>
      {text}
    </small>
  );
}

function Told({ attempt, row }: { readonly attempt: AttemptRecord; readonly row: AttemptRow }) {
  return (
    <>
      <td>
        <span>{row.combination}</span>
        <Short text={`${row.lock}, ${row.help}`} />
        {row.tags !== "" && <Short text={row.tags} />}
      </td>
      <td>
        <span className={isMiss(attempt) ? "missed font-semibold" : ""}>{row.result}</span>
        <small className="block text-fine line-clamp-2 whitespace-normal" title={row.faults}>
          {row.faults}
        </small>
      </td>
      <td>
        <span title={row.stops}>{row.stops}</span>
        <small className="block text-fine">{row.time}</small>
      </td>
    </>
  );
}

/** A try of a sitting that goes on: only that it is saved is shown. */
function Untold({ row: { lock, help } }: { readonly row: AttemptRow }) {
  return (
    <>
      <td>
        <span>In a sitting</span>
        <Short text={`${lock}, ${help}`} />
      </td>
      <td colSpan={2}>
        <span>Saved</span>
        <small className="block text-fine line-clamp-2 whitespace-normal">The result is shown after the sitting.</small>
      </td>
    </>
  );
}

/** What is told of an attempt beside its time; nothing while it is being read. */
function Cells({
  attempt,
  row,
  isUntold,
}: {
  attempt: AttemptRecord | null;
  row: AttemptRow | null;
  isUntold: boolean;
}) {
  if (attempt === null || row === null) return <td colSpan={3} />;
  return isUntold ? <Untold row={row} /> : <Told attempt={attempt} row={row} />;
}

/** Rows are counted from 1, the head among them. */
const ROW_OF_FIRST = 2;

function Line({ place, attempt, isUntold, isChosen, isTabStop, onChoose }: AttemptLineProps) {
  const row = attempt && attemptRowOf(attempt);
  const replayed = isUntold ? null : attempt;
  return (
    <tr className="attempt-row" aria-rowindex={place + ROW_OF_FIRST}>
      <th scope="row">
        <Button
          className="slim text-left whitespace-nowrap phone:whitespace-normal"
          data-place={place}
          tabIndex={isTabStop ? 0 : -1}
          aria-pressed={replayed ? isChosen : undefined}
          aria-disabled={replayed === null}
          onClick={() => replayed && onChoose(replayed)}
        >
          {replayed && <span className="visually-hidden">Replay the attempt of </span>}
          {row?.day ?? "…"} <b>{row?.clock}</b>
        </Button>
      </th>
      <Cells attempt={attempt} row={row} isUntold={isUntold} />
    </tr>
  );
}

/**
 * One attempt of the list. Its button stays in place while the line is read, so that it does not lose the focus; a line
 * that scrolls on is not drawn anew.
 */
export const AttemptLine = memo(Line);
