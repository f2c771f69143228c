import { useCallback, useEffect, useState } from "react";
import type * as z from "zod/mini";
import { harmlessName } from "../../lock/harmlessText";
import { dueAnswer } from "../../school/wire/assignmentsWire";
import { countText } from "../../wording/amountWords";
import { Button } from "../parts/controls/Button";
import { askServer } from "./askServer";
import { CommentsHere } from "./CommentsHere";
import { type Due, dueSentence, latestSentence } from "./dueWords";
import { toBegin } from "./toBegin";

type DueList = z.output<typeof dueAnswer>;

interface DueHereProps {
  /** Who practices, as the class knows the person. */
  readonly person: { readonly id: string; readonly name: string };
}

/** Asked again so often, ms: a sitting that an instructor opens is seen within it. */
const AGAIN_MS = 30_000;

/** What is due for a person; null until the server has answered. */
function useDue(personId: string) {
  const [list, setList] = useState<DueList | null>(null);
  const look = useCallback(async () => {
    const answer = await askServer(`/bench/people/${encodeURIComponent(personId)}/due`, dueAnswer);
    if (answer.kind === "answered") setList(answer.value);
  }, [personId]);
  useEffect(() => {
    void look();
    const timer = setInterval(() => void look(), AGAIN_MS);
    return () => clearInterval(timer);
  }, [look]);
  return { list, look };
}

function DueRow({ due, person }: DueHereProps & { readonly due: Due }) {
  const begin = () => {
    // It is asked for on the page of the sittings, where it is known whether another one is under way.
    toBegin.ask({ assignmentId: due.assignmentId, person });
    location.assign("#/sittings");
  };
  return (
    <li className="row items-center gap-x-4 py-2 ruled">
      <span className="flex-1">
        <b className="block font-semibold">{harmlessName(due.title)}</b>
        <small>
          {due.kind === "test" ? "A test. " : "Practice. "}
          {dueSentence(due)}
          {due.extraTime > 0 && ` You have ${due.extraTime} % extra time.`} {latestSentence(due)}
        </small>
      </span>
      {due.state === "open" && (
        <Button aria-label={`Begin ${due.title}`} onClick={begin}>
          Begin
        </Button>
      )}
    </li>
  );
}

/** What the class has set whoever practices here: when, how often, and the way into it. */
export function DueHere({ person }: DueHereProps) {
  const { list, look } = useDue(person.id);
  const [isReading, setReading] = useState(false);
  if (list === null || (list.due.length === 0 && list.unread === 0)) return null;
  return (
    <section className="w-full max-w-[1120px] mx-auto px-6 pt-4 pb-3 phone:px-4" aria-labelledby="due-here">
      <h2 id="due-here" className="mb-3">
        From your class
      </h2>
      <ul className="plain">
        {list.due.map((due) => (
          <DueRow key={due.assignmentId} {...{ due, person }} />
        ))}
      </ul>
      {list.unread > 0 && !isReading && (
        <Button className="mt-3" onClick={() => setReading(true)}>
          Read {countText(list.unread, "new comment")}
        </Button>
      )}
      {isReading && <CommentsHere personId={person.id} onRead={() => void look()} />}
    </section>
  );
}
