import type { ReactNode } from "react";
import { Button } from "../../parts/controls/Button";
import { HeadRow } from "../../parts/HeadRow";

interface WhenProps {
  /** "job", "sitting" */
  readonly what: string;
  readonly day: string;
  readonly clock: string;
  readonly isChosen: boolean;
  readonly onChoose: () => void;
}

/** When a record was made, as the button that looks at it. */
export function When({ what, day, clock, isChosen, onChoose }: WhenProps) {
  return (
    <th scope="row">
      <Button
        className="slim text-left whitespace-nowrap phone:whitespace-normal"
        aria-pressed={isChosen}
        onClick={onChoose}
      >
        <span className="visually-hidden">Look at the {what} of </span>
        {day} <b>{clock}</b>
      </Button>
    </th>
  );
}

interface RecordListProps {
  /** "Jobs" */
  readonly what: string;
  readonly headings: readonly string[];
  readonly children: ReactNode;
}

/** A page of records, latest first. */
export function RecordList({ what, headings, children }: RecordListProps) {
  return (
    <table className="attempt-list mt-3">
      <caption className="visually-hidden">{what}, latest first</caption>
      <HeadRow of={["When", ...headings]} />
      <tbody>{children}</tbody>
    </table>
  );
}

interface PagerProps {
  /** "jobs" */
  readonly what: string;
  readonly later: (() => void) | null;
  readonly earlier: (() => void) | null;
  /** Which of them are shown. */
  readonly children: ReactNode;
}

/** The way to later and earlier pages of a list. */
export function Pager({ what, later, earlier, children }: PagerProps) {
  return (
    <nav
      className="logbook-pager row gap-x-4 justify-end mt-3 mb-5 text-small"
      aria-label={`Pages of ${what}`}
      data-only={later === null && earlier === null}
    >
      <p role="status">{children}</p>
      <Button disabled={later === null} onClick={() => later?.()}>
        Later
      </Button>
      <Button disabled={earlier === null} onClick={() => earlier?.()}>
        Earlier
      </Button>
    </nav>
  );
}
