import { useLogbook } from "../../../../keeping/useLogbook";
import { Notice } from "../../../../parts/Notice";

/** Says on the page itself, and at once, that the handover is not stored and why; nothing where it is. */
export function NotStored() {
  const problem = useLogbook()?.logbook.problem ?? null;
  if (problem === null) return null;
  return (
    <Notice className="mx-6 my-3 print:hidden">
      This handover is not stored. {problem.message} Keep this tab open until you have saved or printed the record.
    </Notice>
  );
}
