import { Button } from "../../parts/controls/Button";
import { HeadRow } from "../../parts/HeadRow";
import { shownName } from "../../parts/shownName";
import type { BoardRow } from "./boardRows";
import { doingWords, lastWords, lockWords, STANDING_MARKS, standingWords, unsentWords, whoWords } from "./boardWords";

const HEAD = ["Who", "Now", "Doing", "Last result", "Watch or help"] as const;

interface RowProps {
  readonly row: BoardRow;
  /** By the server's clock, milliseconds since 1970. */
  readonly now: number;
  readonly isWatched: boolean;
  readonly onWatch: (deviceId: string) => void;
  readonly onLower: (row: BoardRow) => void;
}

function Row({ row, now, isWatched, onWatch, onLower }: RowProps) {
  const { bench, standing, benchName, person } = row;
  const who = whoWords(row);
  const [, standingHead, doing, last] = HEAD;
  const words = standingWords(row, now);
  return (
    <tr>
      <th scope="row" className="wrap-anywhere">
        {who}
        {person !== null && benchName !== null && <small className="block">{shownName(benchName)}</small>}
      </th>
      <td data-head={standingHead}>
        <span className="inline-block w-5 text-center font-semibold" aria-hidden="true">
          {STANDING_MARKS[standing]}
        </span>
        {standing === "help" ? <b>{words}</b> : words}
      </td>
      <td data-head={doing} className="wrap-anywhere">
        {doingWords(bench)}
        {lockWords(bench) !== "" && <small className="block">{lockWords(bench)}</small>}
      </td>
      <td data-head={last}>
        {lastWords(bench)}
        {unsentWords(bench) !== "" && <small className="block">{unsentWords(bench)}</small>}
      </td>
      <td>
        <span className="row gap-2">
          <Button className="slim" aria-pressed={isWatched} onClick={() => onWatch(bench.deviceId)}>
            Watch<span className="visually-hidden"> {who}</span>
          </Button>
          {bench.hand !== null && (
            <Button className="slim primary" onClick={() => onLower(row)}>
              Lower the hand<span className="visually-hidden"> of {who}</span>
            </Button>
          )}
        </span>
      </td>
    </tr>
  );
}

interface TableProps extends Omit<RowProps, "row" | "isWatched"> {
  readonly rows: readonly BoardRow[];
  readonly watched: string | null;
}

/** The benches, those that need help first. */
export function BoardTable({ rows, watched, ...each }: TableProps) {
  return (
    <div className="stacks overflow-x-auto">
      <table>
        <caption className="visually-hidden">Live board</caption>
        <HeadRow of={HEAD} />
        <tbody>
          {rows.map((row) => (
            <Row key={row.bench.deviceId} row={row} isWatched={row.bench.deviceId === watched} {...each} />
          ))}
        </tbody>
      </table>
    </div>
  );
}
