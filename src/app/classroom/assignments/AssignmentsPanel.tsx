import { useState } from "react";
import { assignmentAnswer, assignmentList } from "../../../school/wire/assignmentsWire";
import { roster } from "../../../school/wire/rosterWire";
import { useAsked } from "../../keeping/useLogbook";
import { Notice } from "../../parts/Notice";
import { shownName } from "../../parts/shownName";
import { ToldLine, useDoing } from "../../parts/Told";
import { classAddress } from "../address/classroomAddress";
import type { ClassProps } from "../asking/classProps";
import { AssignmentPage } from "./AssignmentPage";
import { AssignmentTable } from "./AssignmentTable";
import type { AssignmentDraft } from "./assignmentDraft";
import { termsOf } from "./assignmentDraft";
import type { Assignment } from "./assignmentWords";

function titleOf(chosen: string, assignments: readonly Assignment[]): string {
  if (chosen === "new") return "New assignment";
  const hasEnded = assignments.some(({ id, endedAt }) => id === chosen && endedAt !== null);
  return hasEnded ? "An assignment that has ended" : "Change an assignment";
}

/** What a class was set: a list, and one of them to change, or a new one. */
export function AssignmentsPanel({ asking, one, query }: ClassProps) {
  const [version, setVersion] = useState(0);
  const chosen = query.get("assignment");
  const path = `/classes/${one.id}`;
  const { answer, problem } = useAsked(`assignments ${one.id} ${version}`, async () => {
    const [{ assignments }, { people }] = await Promise.all([
      asking.read(`${path}/assignments`, assignmentList),
      asking.read(`${path}/people`, roster),
    ]);
    return { assignments, people, now: Date.now() };
  });
  const { told, act } = useDoing();
  const listAddress = classAddress(one.id, "assignments");
  const anewAddress = (earlier: string) => classAddress(one.id, "assignments", { assignment: "new", earlier });
  const addressOf = (assignment: string) => classAddress(one.id, "assignments", { assignment });
  /** Does something to the assignments and goes back to their list; what went wrong is told beside the form. */
  const change = (doing: () => Promise<string>) =>
    act(async () => {
      try {
        const says = await doing();
        location.replace(listAddress);
        return says;
      } finally {
        setVersion((before) => before + 1);
      }
    });
  const save = (draft: AssignmentDraft, before: Assignment | null) =>
    change(async () => {
      const sheet = draft.sheet === null ? {} : { sheet: draft.sheet };
      const terms = termsOf(draft, before);
      if (before === null) {
        const made = await asking.change("/assignments", assignmentAnswer, { classId: one.id, ...sheet, ...terms });
        return `${shownName(made.title)} is assigned. Benches show it within half a minute.`;
      }
      const value = { version: before.version, ...sheet, ...terms };
      const changed = await asking.replace(`/assignments/${before.id}`, assignmentAnswer, value);
      return `${shownName(changed.title)} is changed.`;
    });
  const end = (assignment: Assignment) =>
    change(async () => {
      await asking.change(`/assignments/${assignment.id}/end`, assignmentAnswer);
      return `${shownName(assignment.title)} has ended.`;
    });
  const withdraw = (assignment: Assignment) =>
    change(async () => {
      await asking.act(`/assignments/${assignment.id}/withdraw`);
      return `${shownName(assignment.title)} is withdrawn.`;
    });
  const { assignments = [], people = [], now = 0 } = answer ?? {};
  const isOpen = one.endedAt === null;
  return (
    <section className="stack" aria-labelledby="class-assignments">
      <div className="spread items-center">
        <h2 id="class-assignments">{chosen === null ? "Assignments" : titleOf(chosen, assignments)}</h2>
        {isOpen && chosen === null && assignments.length > 0 && (
          <a className="button" href={addressOf("new")}>
            New assignment
          </a>
        )}
      </div>
      {chosen === null && <ToldLine told={told} />}
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer !== null && chosen !== null && (
        <AssignmentPage
          key={chosen}
          earlier={query.get("earlier")}
          {...{ asking, chosen, assignments, people, listAddress, anewAddress, save, end, withdraw }}
        />
      )}
      {chosen !== null && <ToldLine told={told} />}
      {answer !== null && chosen === null && assignments.length === 0 && (
        <>
          <p>
            This class has no assignment yet. Assign a sheet: each apprentice sees it on the start page of the bench,
            with the last time to begin it. What a sheet asks is not shown before it is begun.
          </p>
          {isOpen && (
            <a className="button primary self-start" href={addressOf("new")}>
              Assign a sheet
            </a>
          )}
        </>
      )}
      {chosen === null && assignments.length > 0 && (
        <AssignmentTable
          assignments={assignments}
          names={new Map(people.map(({ id, name }) => [id, name]))}
          now={now}
          addressOf={({ id }) => addressOf(id)}
        />
      )}
    </section>
  );
}
