import type { Observation } from "../../../../handover/trouble/observation";
import type { LockCard } from "../../../../handover/trouble/trouble";
import { TextTable } from "../../../parts/TextTable";
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
          <TextTable
            className="mt-3"
            head={["#", "what was done", "what it showed"]}
            rows={rows.map(({ key, done, showed }) => [key, done, showed])}
          />
        </section>
      )}
    </section>
  );
}
