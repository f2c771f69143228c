import type { Observation } from "../../../../handover/trouble/observation";
import type { LockCard } from "../../../../handover/trouble/trouble";
import { seenRow } from "./observationRows";

interface SeenTableProps {
  readonly card: LockCard;
  readonly log: readonly Observation[];
}

/** Tries and measurements in the order they were made, the latest first. */
export function SeenTable({ card, log }: SeenTableProps) {
  const rows = log.map((seen, index) => seenRow(seen, index, card)).reverse();
  return (
    <section className="panel" aria-label="Seen so far">
      <h2>
        Seen so far <small>the latest first</small>
      </h2>
      {rows.length === 0 ? (
        <p className="text-soft">Nothing yet. Dial the lock, or use an instrument.</p>
      ) : (
        <section
          className="max-h-[300px] overflow-auto phone:max-h-[190px]"
          aria-label="Tries and measurements"
          tabIndex={rows.length > 5 ? 0 : undefined}
        >
          <table className="mt-3">
            <thead>
              <tr>
                <th scope="col">#</th>
                <th scope="col">what was done</th>
                <th scope="col">what it showed</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ key, done, showed }) => (
                <tr key={key}>
                  <th scope="row">{key}</th>
                  <td>{done}</td>
                  <td>{showed}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </section>
  );
}
