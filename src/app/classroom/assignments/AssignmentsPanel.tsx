import { harmlessName } from "../../../lock/harmlessText";
import { assignmentList } from "../../../school/wire/assignmentsWire";
import { useAsked } from "../../keeping/useLogbook";
import { Notice } from "../../parts/Notice";
import { StackedTable } from "../../parts/TextTable";
import type { OfClass } from "../asking/classProps";
import {
  type Assignment,
  attemptsText,
  forText,
  KIND_WORDS,
  momentText,
  soFarText,
  standingText,
} from "./assignmentWords";

const HEAD = ["Sheet", "For", "From", "Until", "Attempts", "Now", "So far"] as const;

const rowOf = (one: Assignment): string[] => [
  `${harmlessName(one.title)} (${KIND_WORDS[one.kind].toLowerCase()})`,
  forText(one),
  momentText(one.from),
  momentText(one.until),
  attemptsText(one),
  standingText(one, Date.now()),
  soFarText(one),
];

/** What a class was set. */
export function AssignmentsPanel({ asking, one }: OfClass) {
  const { answer, problem } = useAsked(`assignments ${one.id}`, () =>
    asking.read(`/classes/${one.id}/assignments`, assignmentList),
  );
  return (
    <section className="stack gap-5" aria-labelledby="class-assignments">
      <h2 id="class-assignments">Assignments</h2>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer?.assignments.length === 0 && <p>This class has no assignment yet.</p>}
      {answer !== null && answer.assignments.length > 0 && (
        <StackedTable caption="Assignments" head={HEAD} rows={answer.assignments.map(rowOf)} />
      )}
    </section>
  );
}
