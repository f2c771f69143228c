import { useEffect, useState } from "react";
import { Button } from "../parts/controls/Button";
import { Dialog, fetchDialog } from "../parts/controls/Dialog";
import { shownName } from "../parts/shownName";
import { HandPart } from "./live/HandPart";
import { OfPage } from "./OfPage";
import { NewsLine } from "./page/NewsLine";
import { usePagePath } from "./page/pagePath";
import { SchoolPanel } from "./SchoolPanel";
import type { SchoolBench } from "./schoolBench";
import { sendingWords } from "./sendingWords";
import { useSchoolBench } from "./useSchoolBench";

/** Who practices here, and of which class. */
function Who({ bench }: { readonly bench: SchoolBench }) {
  const { joining, joinings } = bench;
  const name = bench.current.person?.name;
  if (joining !== null) {
    return (
      <>
        You are <b>{shownName(joining.name)}</b>
        <span className="phone:hidden">, {shownName(joining.class.name)}</span>.
      </>
    );
  }
  if (joinings.length === 0) return "This bench has not joined a class.";
  return name === undefined ? "Nobody of the class practices here." : `${shownName(name)} is not in the class.`;
}

/** The line of a bench of a class, under the head of every page: who practices here, and whether the class has all. */
export function SchoolLine() {
  const bench = useSchoolBench();
  const [isOpen, setIsOpen] = useState(false);
  const path = usePagePath();
  const isJoined = bench !== null && bench.joinings.length > 0;
  useEffect(() => {
    // Whoever looks why nothing is sent has no network to fetch it with.
    if (isJoined) fetchDialog().catch(() => undefined);
  }, [isJoined]);
  // Where one joins there is nothing to say yet, and an instructor's page is no bench.
  if (path === "instructor" || (path === "join" && !isJoined)) return null;
  if (bench === null) return <div className="min-h-[44px]" />;
  const words = sendingWords(bench.sender.state);
  return (
    <>
      <aside className="row min-h-[44px] gap-x-4 px-5 py-1 text-small print:hidden" aria-label="Class">
        <p>
          <Who bench={bench} />
        </p>
        {isJoined ? (
          <Button className="slim" aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
            Not you?
          </Button>
        ) : (
          <>
            <a href="#/join">Join a class</a>
            <a className="ml-auto" href="#/instructor">
              For instructors
            </a>
          </>
        )}
        {bench.joining !== null && bench.live !== null && <HandPart live={bench.live} />}
        {isJoined && (
          <>
            <p className="visually-hidden" role="status">
              {words}
            </p>
            <Button className="slim ml-auto" aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
              {words}
            </Button>
          </>
        )}
        <Dialog title="This bench and its class" isOpen={isOpen} onClose={() => setIsOpen(false)}>
          <SchoolPanel bench={bench} onClose={() => setIsOpen(false)} />
        </Dialog>
      </aside>
      <NewsLine news={bench.news} onRead={() => bench.readNews()} />
      <OfPage path={path} person={bench.joining} logbook={bench.current.logbook} />
    </>
  );
}
