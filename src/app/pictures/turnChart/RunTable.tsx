import { capital } from "../../../dialing/words";
import { type Lock, positionText } from "./chartWords";
import type { RunRow } from "./runRows";

interface Props {
  readonly rows: readonly RunRow[];
  readonly lock: Lock;
  /** Whether readings and sizes are told. */
  readonly hasFigures: boolean;
}

/** The chart as a table, for those who hear it. */
export function RunTable({ rows, lock, hasFigures }: Props) {
  return (
    // A table is as wide as its words, hidden or not: what is around it clips it.
    <div className="visually-hidden">
      <table>
        <caption>Runs of the attempt</caption>
        <thead>
          <tr>
            <th scope="col">Turn</th>
            {hasFigures && <th scope="col">From</th>}
            {hasFigures && <th scope="col">To</th>}
            <th scope="col">Number</th>
            <th scope="col">Arrivals</th>
            {hasFigures && <th scope="col">Stop error, graduations</th>}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.index}>
              <th scope="row">{capital(row.turn)}</th>
              {hasFigures && <td>{positionText(row.from, lock)}</td>}
              {hasFigures && <td>{positionText(row.to, lock)}</td>}
              <td>{row.number}</td>
              <td>{row.arrivals}</td>
              {hasFigures && <td>{row.stopError}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
