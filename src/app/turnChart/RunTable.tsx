import { capital } from "../../dialing/words";
import type { Lock } from "./chartWords";
import { positionText } from "./chartWords";
import type { RunRow } from "./runRows";

interface Props {
  readonly rows: readonly RunRow[];
  readonly lock: Lock;
}

/** The chart as a table, for those who hear it. */
export function RunTable({ rows, lock }: Props) {
  return (
    <table className="visually-hidden">
      <caption>Runs of the attempt</caption>
      <thead>
        <tr>
          <th scope="col">Turn</th>
          <th scope="col">From</th>
          <th scope="col">To</th>
          <th scope="col">Number</th>
          <th scope="col">Arrivals</th>
          <th scope="col">Stop error</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.index}>
            <th scope="row">{capital(row.turn)}</th>
            <td>{positionText(row.from, lock)}</td>
            <td>{positionText(row.to, lock)}</td>
            <td>{row.number}</td>
            <td>{row.arrivals}</td>
            <td>{row.stopError}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
