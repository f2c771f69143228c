import { auditLog } from "../../../school/wire/auditWire";
import { classList } from "../../../school/wire/classWire";
import { instructorList } from "../../../school/wire/instructorsWire";
import { schoolPeople } from "../../../school/wire/rosterWire";
import { useAsked } from "../../keeping/useLogbook";
import { clockText, dayText } from "../../parts/moments";
import { Notice } from "../../parts/Notice";
import type { Asking } from "../asking/asking";
import { auditSentence } from "./auditWords";

interface PageProps {
  readonly asking: Asking;
  readonly query: URLSearchParams;
}

/** Names of all that a change can be of. */
async function namesOf(asking: Asking): Promise<ReadonlyMap<string, string>> {
  const [{ classes }, { people }, { instructors }] = await Promise.all([
    asking.read("/classes", classList),
    asking.read("/people", schoolPeople),
    asking.read("/instructors", instructorList),
  ]);
  return new Map([...classes, ...people, ...instructors].map(({ id, name }) => [id, name]));
}

/** What instructors of the school changed, the latest first, for its head. */
export function AuditPage({ asking, query }: PageProps) {
  const before = query.get("before");
  const { answer, problem } = useAsked(`audit ${before}`, async () => {
    const path = before === null ? "/audit" : `/audit?${new URLSearchParams({ before })}`;
    const [log, names] = await Promise.all([asking.read(path, auditLog), namesOf(asking)]);
    return { ...log, names };
  });
  const last = answer?.entries.at(-1);
  return (
    <>
      <h1 tabIndex={-1}>What instructors changed</h1>
      <p className="text-small text-soft">The latest is first. Entries stay; the name of an erased person does not.</p>
      {problem !== null && <Notice className="">{problem}</Notice>}
      {answer?.entries.length === 0 && <p>There is nothing older.</p>}
      <ul className="plain">
        {answer?.entries.map((entry) => (
          <li key={entry.id} className="py-2 ruled">
            <span className="min-w-0 wrap-anywhere">
              {auditSentence(entry, answer.names)}
              <small className="block">
                {dayText(entry.at)}, {clockText(entry.at)}
              </small>
            </span>
          </li>
        ))}
      </ul>
      <nav className="row gap-x-5" aria-label="Pages of changes">
        {before !== null && <a href="#/instructor/audit">The latest changes</a>}
        {answer?.isMore === true && last !== undefined && (
          <a href={`#/instructor/audit?${new URLSearchParams({ before: String(last.id) })}`}>Older changes</a>
        )}
      </nav>
    </>
  );
}
