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
  readonly assignments: readonly Assignment[];
  readonly people: readonly RosterPerson[];
  /** Address of the list. */
  readonly listAddress: string;
  readonly save: (draft: AssignmentDraft, before: Assignment | null) => Promise<unknown>;
  readonly end: (assignment: Assignment) => void;
  readonly withdraw: (assignment: Assignment) => void;
}

/** One that is there: its form while it goes on, and how to end it. */
function Existing(props: Omit<PageProps, "assignments" | "chosen"> & { readonly assignment: Assignment }) {
  const { asking, assignment, people, listAddress, save, end, withdraw } = props;
  const { answer, problem } = useAsked(assignment.id, async () =>
    assignedSheet((await asking.read(`/assignments/${assignment.id}`, assignmentWithSheet)).sheet),
  );
  if (problem !== null) return <Notice className="">{problem}</Notice>;
  if (answer === null) return null;
  if (assignment.endedAt !== null) {
    return (
      <>
        <ChosenSheet chosen={answer} />
        <p>{standingText(assignment, 0)}. It cannot be opened again; assign the sheet anew.</p>
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
export function AssignmentPage({ chosen, assignments, ...rest }: PageProps) {
  const assignment = assignments.find(({ id }) => id === chosen);
  if (chosen === "new") {
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
