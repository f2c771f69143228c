import { HeadRow } from "../../parts/HeadRow";
import { shownName } from "../../parts/shownName";
import {
  type Assignment,
  attemptsText,
  extraText,
  forText,
  KIND_WORDS,
  momentText,
  soFarText,
  standingText,
} from "./assignmentWords";

const HEAD = ["Sheet", "Can be begun", "Attempts", "So far", "Open"] as const;

interface TableProps {
  readonly assignments: readonly Assignment[];
  /** Names of the class's people, by id. */
  readonly names: ReadonlyMap<string, string>;
  /** Milliseconds since 1970. */
  readonly now: number;
  readonly addressOf: (one: Assignment) => string;
}

/** What a class was set, the latest first. */
export function AssignmentTable({ assignments, names, now, addressOf }: TableProps) {
  const [, begun, attempts, soFar] = HEAD;
  return (
    <div className="stacks overflow-x-auto">
      <table className="[&_:is(td,th)]:align-middle">
        <caption className="visually-hidden">Assignments</caption>
        <HeadRow of={HEAD} />
        <tbody>
          {assignments.map((one) => (
            <tr key={one.id}>
              <th scope="row" className="wrap-anywhere">
                <b className="font-medium">{shownName(one.title)}</b>
                <small className="block">
                  {KIND_WORDS[one.kind]} for {forText(one, names)}
                  {extraText(one)}
                </small>
              </th>
              <td data-head={begun}>
                {standingText(one, now)}
                <small className="block">
                  {momentText(one.from)} to {momentText(one.until)}
                </small>
              </td>
              <td data-head={attempts}>{attemptsText(one)}</td>
              <td data-head={soFar}>{soFarText(one)}</td>
              <td>
                <a className="button slim" href={addressOf(one)}>
                  Open<span className="visually-hidden"> {shownName(one.title)}</span>
                </a>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
