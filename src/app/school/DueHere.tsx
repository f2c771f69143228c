import { type ReactNode, useState } from "react";
import { dueLater } from "../../school/assignments/assignment";
import type { Logbook } from "../../store/logbook";
import type { KeptDue } from "../../store/outbox/dueHere";
import { countText } from "../../wording/amountWords";
import { Button } from "../parts/controls/Button";
import { shownName } from "../parts/shownName";
import { CommentsHere } from "./CommentsHere";
import { asOfSentence, type Due, dueSentence, latestSentence, NOTHING_KNOWN, WITHOUT_SERVER } from "./dueWords";
import { toBegin } from "./page/toBegin";
import { useDue } from "./useDue";

interface OfPerson {
  /** Who practices, as the class knows the person. */
  readonly person: { readonly id: string; readonly name: string };
}

interface RowProps extends OfPerson {
  readonly due: Due;
  /** Whether the server is there, from which a sitting begins. */
  readonly canBegin: boolean;
}

function DueRow({ due, person, canBegin }: RowProps) {
  const begin = () => {
    // It is asked for on the page of the sittings, where it is known whether another one is under way.
    toBegin.ask({ assignmentId: due.assignmentId, person });
    location.assign("#/sittings");
  };
  return (
    <li className="row items-center gap-x-4 py-2 ruled">
      <span className="flex-1">
        <b className="block font-semibold">{shownName(due.title)}</b>
        <small>
          {due.kind === "test" ? "A test. " : "Practice. "}
          {dueSentence(due)}
          {due.extraTime > 0 && ` You have ${due.extraTime} % extra time.`} {latestSentence(due)}
        </small>
      </span>
      {due.state === "open" && canBegin && (
        <Button aria-label={`Begin ${shownName(due.title)}`} onClick={begin}>
          Begin
        </Button>
      )}
    </li>
  );
}

/** How it all stands now: a bench that was without network for a while goes by the time since. */
function dueNow({ list, at }: KeptDue): readonly Due[] {
  // A clock that was set back tells nothing of the time since.
  const later_ms = Math.max(0, Date.now() - at);
  return list.due.map((due) => dueLater(due, list.now + later_ms));
}

function FromClass({ children }: { readonly children: ReactNode }) {
  return (
    <section className="w-full max-w-[1120px] mx-auto px-6 pt-4 pb-3 phone:px-4" aria-labelledby="due-here">
      <h2 id="due-here" className="mb-3">
        From your class
      </h2>
      {children}
    </section>
  );
}

/** What the class has set whoever practices here: when, how often, and the way into it; without network, as it was last told. */
export function DueHere({ person, logbook }: OfPerson & { readonly logbook: Logbook }) {
  const { known, look } = useDue(person.id, logbook);
  const [isReading, setReading] = useState(false);
  if (known === null) return null;
  const { kept, why } = known;
  if (kept === null) {
    return (
      <FromClass>
        <p>{NOTHING_KNOWN}</p>
      </FromClass>
    );
  }
  const { due, unread } = kept.list;
  if (due.length === 0 && unread === 0) return null;
  return (
    <FromClass>
      {why !== null && (
        <p className="text-small mb-3">
          <b>{asOfSentence(kept.at, Date.now(), why)}</b> {WITHOUT_SERVER}
        </p>
      )}
      <ul className="plain">
        {dueNow(kept).map((one) => (
          <DueRow key={one.assignmentId} due={one} person={person} canBegin={why === null} />
        ))}
      </ul>
      {why !== null && (
        <Button className="mt-3" onClick={() => void look()}>
          Ask the server again
        </Button>
      )}
      {why === null && unread > 0 && !isReading && (
        <Button className="mt-3" onClick={() => setReading(true)}>
          Read {countText(unread, "new comment")}
        </Button>
      )}
      {isReading && <CommentsHere personId={person.id} onRead={() => void look()} />}
    </FromClass>
  );
}
