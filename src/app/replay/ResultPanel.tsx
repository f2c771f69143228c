import type { Attempt } from "../../dialing/attempt";
import type { WordedFault } from "../../dialing/faultWords";
import { lesson } from "../../dialing/lesson";
import { useScrollsOn } from "../parts/page/useScrollsOn";
import { TextTable } from "../parts/TextTable";
import { headline } from "./headline";
import type { Outcome } from "./outcome";
import { resultRows } from "./resultRows";
import "./result.css";

interface ResultPanelProps {
  readonly attempt: Attempt;
  readonly outcome: Outcome | null;
  readonly faults: readonly WordedFault[];
  /** The own estimate beside the truth, in a sentence; null where none was given. */
  readonly estimate: string | null;
  /** Whether sizes are told while the attempt is under way; at its end they are. */
  readonly hasFigures?: boolean;
}

function Rows({ attempt, outcome, hasFigures = true }: Pick<ResultPanelProps, "attempt" | "outcome" | "hasFigures">) {
  const ofWheel = (cell: string) => (attempt.pack === null ? [] : [cell]);
  const stop = hasFigures ? "stop error, graduations" : "stop";
  const rows = outcome === null ? resultRows(attempt, hasFigures) : resultRows(outcome.stood);
  return (
    <TextTable
      head={["number", "arrivals", stop, ...ofWheel("its wheel"), "time"]}
      rows={rows.map((row) => [row.number, row.arrivals, row.stopError, ...ofWheel(row.wheel), row.time])}
    />
  );
}

/** What happened so far, or in the attempt that has ended: a sentence, the faults, a table, and what to do better. */
export function ResultPanel(props: ResultPanelProps) {
  const { attempt, outcome, faults, estimate } = props;
  const { panel, end, hasMore } = useScrollsOn();
  const isOver = outcome !== null;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a panel that scrolls must be reachable by keyboard
    <section ref={panel} className="panel result" aria-label="What happened" tabIndex={0}>
      <h2>
        What happened <small>{isOver ? "in this attempt" : "so far"}</small>
      </h2>
      {isOver && (
        <>
          <p className="result-headline text-title">{headline(outcome)}</p>
          {estimate !== null && <p className="mb-1">{estimate}</p>}
          <p className="mb-3 font-semibold">{lesson(attempt, faults)}</p>
        </>
      )}
      <ul className="plain mb-3">
        {faults.map((fault) => (
          <li className="pointed mt-2" key={`${fault.code}-${fault.number}-${fault.size}`}>
            {fault.message}
          </li>
        ))}
      </ul>
      <Rows {...props} />
      <div ref={end} />
      {hasMore && (
        <p
          className="result-more sticky -mx-6 -mb-4 px-6 py-2 border-t border-t-line bg-well text-fine text-center"
          aria-hidden="true"
        >
          Scroll down for more <span>▾</span>
        </p>
      )}
    </section>
  );
}
