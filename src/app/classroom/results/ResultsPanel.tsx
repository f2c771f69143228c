import { classResults } from "../../../school/wire/assignmentsWire";
import { useAsked } from "../../keeping/useLogbook";
import { Notice } from "../../parts/Notice";
import { fetchedLater } from "../../parts/page/fetchedLater";
import { shownName } from "../../parts/shownName";
import { classAddress } from "../address/classroomAddress";
import type { ClassProps } from "../asking/classProps";
import { ResultTable } from "./ResultTable";
import type { ClassResults } from "./resultWords";

const SittingPage = fetchedLater(async () => (await import("./SittingPage")).SittingPage, null);
const DifficultyPage = fetchedLater(async () => (await import("./DifficultyPage")).DifficultyPage, null);

/** Who sat, and what came of it: everybody's, or one sitting, or how hard a sheet proved. */
export function ResultsPanel({ asking, one, query }: ClassProps) {
  const [sittingId, ofAssignment] = [query.get("sitting"), query.get("difficulty")];
  const { answer, problem } = useAsked(`results ${one.id} ${sittingId === null}`, () =>
    asking.read(`/classes/${one.id}/results`, classResults),
  );
  const list = classAddress(one.id, "results");
  if (sittingId !== null) {
    return (
      <section className="stack gap-5" aria-labelledby="class-sitting">
        <div className="spread">
          <h2 id="class-sitting">A sitting</h2>
          <a className="print:hidden" href={list}>
            All results
          </a>
        </div>
        <SittingPage key={sittingId} asking={asking} sittingId={sittingId} name={nameOf(answer, sittingId)} />
      </section>
    );
  }
  if (ofAssignment !== null) {
    return (
      <section className="stack gap-5" aria-labelledby="class-difficulty">
        <div className="spread">
          <h2 id="class-difficulty">What was hard</h2>
          <a href={list}>All results</a>
        </div>
        <DifficultyPage key={ofAssignment} asking={asking} assignmentId={ofAssignment} />
      </section>
    );
  }
  return (
    <section className="stack" aria-labelledby="class-results">
      <h2 id="class-results">Results</h2>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer !== null && <Everybody results={answer} classId={one.id} />}
    </section>
  );
}

/** Whose sitting it is, among the results; undefined where it is nobody's of this class. */
function nameOf(results: ClassResults | null, sittingId: string): string | undefined {
  return results?.people.find((person) =>
    person.results.some(({ best, latest, others }) =>
      [best, latest, ...others].some((line) => line?.sittingId === sittingId),
    ),
  )?.name;
}

function Everybody({ results, classId }: { readonly results: ClassResults; readonly classId: string }) {
  const { assignments, people } = results;
  if (assignments.length === 0) {
    return (
      <p>
        This class has no assignment yet, so there are no results.{" "}
        <a href={classAddress(classId, "assignments", { assignment: "new" })}>Assign a sheet.</a>
      </p>
    );
  }
  if (people.length === 0) return <p>Nobody is on the roster yet.</p>;
  return (
    <>
      <p className="text-small text-soft">
        By the server’s own marks. Open a result to see its stations, tries and questions. A practice result is not a
        certificate.
      </p>
      <ResultTable results={results} addressOf={(sitting) => classAddress(classId, "results", { sitting })} />
      <h3 className="mt-4">What was hard</h3>
      <ul className="plain">
        {assignments
          .filter(({ received }) => received > 0)
          .map(({ id, title }) => (
            <li key={id}>
              <a className="wrap-anywhere" href={classAddress(classId, "results", { difficulty: id })}>
                {shownName(title)}: each question and station
              </a>
            </li>
          ))}
      </ul>
      {assignments.every(({ received }) => received === 0) && <p>Nobody’s sitting has come in yet.</p>}
    </>
  );
}
