import type { Attempt } from "../../dialing/attempt";
import type { WordedFault } from "../../dialing/faultWords";
import { lesson } from "../../dialing/lesson";
import { useScrollsOn } from "../parts/page/useScrollsOn";
import type { Outcome } from "./outcome";
import { headline, type ResultRow, resultRows } from "./resultRows";
import "./result.css";

function Row({ row, hasWheels }: { readonly row: ResultRow; readonly hasWheels: boolean }) {
  return (
    <tr>
      <th scope="row">{row.number}</th>
      <td>{row.arrivals}</td>
      <td>{row.stopError}</td>
      {hasWheels && <td>{row.wheel}</td>}
      <td>{row.time}</td>
    </tr>
  );
}

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
  const hasWheels = attempt.pack !== null;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">number</th>
          <th scope="col">arrivals</th>
          <th scope="col">{hasFigures ? "stop error, graduations" : "stop"}</th>
          {hasWheels && <th scope="col">its wheel</th>}
          <th scope="col">time</th>
        </tr>
      </thead>
      <tbody>
        {(outcome?.rows ?? resultRows(attempt, hasFigures)).map((row) => (
          <Row key={row.key} row={row} hasWheels={hasWheels} />
        ))}
      </tbody>
    </table>
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
