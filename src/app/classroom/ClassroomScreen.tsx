import { useEffect, useRef } from "react";
import { Button } from "../parts/controls/Button";
import { Notice } from "../parts/Notice";
import { fetchedLater } from "../parts/page/fetchedLater";
import { focusHeading } from "../parts/page/focusHeading";
import { shownName } from "../parts/shownName";
import { partNow } from "./address/classroomAddress";
import type { Asking } from "./asking/asking";
import { useSignedIn } from "./asking/useSignedIn";
import { ClassList } from "./classes/ClassList";
import { ClassPage } from "./classes/ClassPage";
import { ByLink, type LinkKind, SignIn } from "./entry/Entry";
import { PeoplePage } from "./people/PeoplePage";
import { TeachersPage } from "./teachers/TeachersPage";
import "./classroom.css";

const AccountPage = fetchedLater(async () => (await import("./account/AccountPage")).AccountPage, null);
const AuditPage = fetchedLater(async () => (await import("./audit/AuditPage")).AuditPage, null);
const KeysPage = fetchedLater(async () => (await import("./keys/KeysPage")).KeysPage, null);

const LINKS: readonly string[] = ["first", "invited", "password"] satisfies LinkKind[];
const isLink = (part: string): part is LinkKind => LINKS.includes(part);

interface Asked {
  /** What is asked for behind "instructor/" in the address; empty for the classes. */
  readonly part: string;
  readonly query: URLSearchParams;
}

function SignedInBar({ asking, onLeave }: { readonly asking: Asking; readonly onLeave: () => void }) {
  const { school, instructor } = asking.signedIn;
  const signOut = async () => {
    await asking.act("/sign-out").catch(() => undefined);
    onLeave();
  };
  return (
    <div className="spread gap-x-5 gap-y-3 pb-3 ruled-below print:hidden">
      <nav className="row gap-x-5" aria-label="Instructor">
        <a href="#/instructor">Classes</a>
        <a href="#/instructor/people">People</a>
        {instructor.role === "head" && (
          <>
            <a href="#/instructor/teachers">Instructors</a>
            <a href="#/instructor/audit">Changes</a>
          </>
        )}
      </nav>
      <div className="row text-small">
        <span className="wrap-anywhere">
          Signed in: <b>{shownName(instructor.name)}</b>, {shownName(school.name)}
        </span>
        <Button className="slim" onClick={signOut}>
          Sign out
        </Button>
      </div>
    </div>
  );
}

function Page({ part, query, asking }: Asked & { readonly asking: Asking }) {
  if (part === "class") {
    const id = query.get("id") ?? "";
    return <ClassPage key={id} asking={asking} id={id} query={query} />;
  }
  if (part === "people") return <PeoplePage asking={asking} />;
  if (part === "audit") return <AuditPage asking={asking} query={query} />;
  if (part === "account") return <AccountPage asking={asking} />;
  if (part === "keys") return <KeysPage asking={asking} />;
  if (part === "teachers") return <TeachersPage asking={asking} />;
  return <ClassList asking={asking} />;
}

/** What an instructor has of the class server: signing in, classes, roster, cards, benches. */
export function ClassroomScreen({ query }: Pick<Asked, "query">) {
  const part = partNow();
  const token = query.get("token");
  const isByLink = isLink(part) && token !== null;
  const { standing, enter, leave, look } = useSignedIn(!isByLink);
  const shown = `${part} ${query} ${standing.kind}`;
  const before = useRef(shown);
  useEffect(() => {
    const isFirst = before.current === shown || before.current.endsWith("asking");
    before.current = shown;
    // What was pressed is gone: reading goes on at the heading.
    if (!isFirst && document.activeElement === document.body) focusHeading();
  }, [shown]);
  return (
    <main className="page gap-6 max-w-[920px] has-[.desk]:max-w-none" id="content">
      {isByLink ? (
        <ByLink key={token} kind={part} token={token} onEnter={enter} />
      ) : (
        <>
          {standing.kind === "silent" && (
            <>
              <h1 tabIndex={-1}>Instructor</h1>
              <Notice className="">{standing.says}</Notice>
              <div className="row">
                <Button onClick={look}>Ask again</Button>
              </div>
            </>
          )}
          {standing.kind === "nobody" && <SignIn onEnter={enter} />}
          {standing.kind === "in" && (
            <>
              <SignedInBar asking={standing.asking} onLeave={leave} />
              <Page part={part} query={query} asking={standing.asking} />
            </>
          )}
        </>
      )}
    </main>
  );
}
