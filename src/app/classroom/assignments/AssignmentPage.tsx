import { assignmentWithSheet } from "../../../school/wire/assignmentsWire";
import { useAsked } from "../../keeping/useLogbook";
import { Notice } from "../../parts/Notice";
import type { Asking } from "../asking/asking";
import type { RosterPerson } from "../roster/RosterTable";
import { AssignmentForm } from "./AssignmentForm";
import type { AssignmentDraft } from "./assignmentDraft";
import { type Assignment, standingText } from "./assignmentWords";
import { EndAssignment } from "./EndAssignment";
import { ChosenSheet } from "./SheetField";
import { assignedSheet } from "./sheetSources";

interface PageProps {
  readonly asking: Asking;
  /** Id of an assignment, or "new". */
  readonly chosen: string;
  /** Id of the one that a new one begins as; null for an empty form. */
  readonly earlier: string | null;
  /** Address of the form that begins as an assignment. */
  readonly anewAddress: (assignmentId: string) => string;
  readonly assignments: readonly Assignment[];
  readonly people: readonly RosterPerson[];
  /** Address of the list. */
  readonly listAddress: string;
  readonly save: (draft: AssignmentDraft, before: Assignment | null) => Promise<unknown>;
  readonly end: (assignment: Assignment) => void;
  readonly withdraw: (assignment: Assignment) => void;
}

type OfOne = Omit<PageProps, "assignments" | "chosen" | "earlier"> & { readonly assignment: Assignment };

/** The sheet of an assignment. */
const useSheet = (asking: Asking, { id }: Assignment) =>
  useAsked(id, async () => assignedSheet((await asking.read(`/assignments/${id}`, assignmentWithSheet)).sheet));

/** A new one that begins as an earlier one, from now. */
function Anew({ asking, assignment, people, listAddress, save }: OfOne) {
  const { answer, problem } = useSheet(asking, assignment);
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null) return null;
  // Whoever left the class meanwhile is not asked for again.
  const isHere = (personId: string) => people.some(({ id }) => id === personId);
  const earlier = {
    ...assignment,
    people: assignment.people?.filter(isHere) ?? null,
    extraTime: assignment.extraTime.filter(({ personId }) => isHere(personId)),
  };
  return (
    <AssignmentForm
      assigned={null}
      earlier={{ assignment: earlier, sheet: answer }}
      {...{ people, listAddress }}
      onSave={(draft) => save(draft, null)}
    />
  );
}

/** One that is there: its form while it goes on, and how to end it. */
function Existing({ asking, assignment, people, listAddress, anewAddress, save, end, withdraw }: OfOne) {
  const { answer, problem } = useSheet(asking, assignment);
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null) return null;
  if (assignment.endedAt !== null) {
    return (
      <>
        <ChosenSheet chosen={answer} />
        <p>{standingText(assignment, 0)}. It cannot be opened again; you can assign the sheet again.</p>
        <a className="button primary self-start" href={anewAddress(assignment.id)}>
          Assign it again
        </a>
        <EndAssignment assignment={assignment} onEnd={() => end(assignment)} onWithdraw={() => withdraw(assignment)} />
        <a href={listAddress}>Back to the list</a>
      </>
    );
  }
  return (
    <>
      <AssignmentForm
        assigned={{ assignment, sheet: answer }}
        people={people}
        listAddress={listAddress}
        onSave={(draft) => save(draft, assignment)}
      />
      <EndAssignment assignment={assignment} onEnd={() => end(assignment)} onWithdraw={() => withdraw(assignment)} />
    </>
  );
}

/** One assignment to change or to end, or a new one. */
export function AssignmentPage({ chosen, earlier, assignments, ...rest }: PageProps) {
  const isNew = chosen === "new";
  const assignment = assignments.find(({ id }) => id === (isNew ? earlier : chosen));
  if (isNew && assignment !== undefined) return <Anew assignment={assignment} {...rest} />;
  if (isNew) {
    const { people, listAddress, save } = rest;
    return <AssignmentForm assigned={null} {...{ people, listAddress }} onSave={(draft) => save(draft, null)} />;
  }
  if (assignment === undefined) {
    return (
      <Notice className="">
        There is no such assignment any more. <a href={rest.listAddress}>Go back to the list.</a>
      </Notice>
    );
  }
  // What somebody else changed meanwhile is shown, not covered.
  return <Existing key={assignment.version} assignment={assignment} {...rest} />;
}
