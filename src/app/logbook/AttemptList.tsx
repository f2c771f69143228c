import type { AttemptRecord } from "../../logbook/attemptRecord";
import { isMiss } from "../../logbook/logbookDatabase";
import { attemptRowOf } from "./attemptRows";

interface AttemptListProps {
  readonly attempts: readonly AttemptRecord[];
  /** Sittings that have not ended: what their tries came to is told then. */
  readonly running: ReadonlySet<string>;
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
        {row.tags !== "" && <small>{row.tags}</small>}
      </td>
      <td>
        <span className={isMiss(attempt) ? "logbook-missed" : ""}>{row.result}</span>
        <small>{row.faults}</small>
      </td>
      <td>
        {row.stops}
        <small>{row.time}</small>
      </td>
    </tr>
  );
}

/** A try of a sitting that goes on: nothing is told of it but that it is kept. */
function UntoldLine({ attempt }: { readonly attempt: AttemptRecord }) {
  const { day, clock, lock, help } = attemptRowOf(attempt);
  return (
    <tr>
      <th scope="row">
        {day} <b>{clock}</b>
      </th>
      <td>
        In a sitting
        <small>
          {lock}, {help}
        </small>
      </td>
      <td colSpan={2}>
        Kept
        <small>what it came to is told when the sitting has ended</small>
      </td>
    </tr>
  );
}

const isUntold = ({ sittingId }: AttemptRecord, running: ReadonlySet<string>) =>
  sittingId !== undefined && running.has(sittingId);

/** A page of attempts, latest first; each can be replayed. */
export function AttemptList({ attempts, running, chosenId, onChoose }: AttemptListProps) {
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
        {attempts.map((attempt) =>
          isUntold(attempt, running) ? (
            <UntoldLine key={attempt.id} attempt={attempt} />
          ) : (
            <Line
              key={attempt.id}
              attempt={attempt}
              isChosen={attempt.id === chosenId}
              onChoose={() => onChoose(attempt)}
            />
          ),
        )}
      </tbody>
    </table>
  );
}
