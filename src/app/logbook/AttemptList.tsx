import type { AttemptRecord } from "../../logbook/attemptRecord";
import { attemptRowOf } from "./attemptRows";

interface AttemptListProps {
  readonly attempts: readonly AttemptRecord[];
  readonly chosenId: string | null;
  readonly onChoose: (attempt: AttemptRecord) => void;
}

function Line({ attempt, isChosen, onChoose }: { attempt: AttemptRecord; isChosen: boolean; onChoose: () => void }) {
  const row = attemptRowOf(attempt);
  return (
    <tr>
      <th scope="row">
        <button type="button" className="button" aria-pressed={isChosen} onClick={onChoose}>
          <span className="visually-hidden">Replay the attempt of </span>
          {row.day} <b>{row.clock}</b>
        </button>
      </th>
      <td>
        {row.combination}
        <small>
          {row.lock}, {row.help}
        </small>
      </td>
      <td>
        <span className={attempt.opened ? "logbook-opened" : "logbook-missed"}>{row.result}</span>
        <small>{row.faults}</small>
      </td>
      <td>
        {row.stops}
        <small>{row.time}</small>
      </td>
    </tr>
  );
}

/** A page of attempts, latest first; each can be replayed. */
export function AttemptList({ attempts, chosenId, onChoose }: AttemptListProps) {
  return (
    <table className="attempt-list">
      <caption className="visually-hidden">Attempts, latest first</caption>
      <thead>
        <tr>
          <th scope="col">When</th>
          <th scope="col">Combination and lock</th>
          <th scope="col">Result and faults</th>
          <th scope="col">Stop errors, time</th>
        </tr>
      </thead>
      <tbody>
        {attempts.map((attempt) => (
          <Line
            key={attempt.id}
            attempt={attempt}
            isChosen={attempt.id === chosenId}
            onChoose={() => onChoose(attempt)}
          />
        ))}
      </tbody>
    </table>
  );
}
