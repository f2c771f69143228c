import { useRef } from "react";
import { fetchedLater } from "../shell/fetchedLater";
import { WordLink } from "../words/WordLink";
import { WordsHere } from "../words/WordsHere";
import { AttemptsView } from "./AttemptsView";
import type { CurrentLogbook } from "./currentLogbook";
import { KeepingLine } from "./KeepingLine";
import { PeopleBar } from "./PeopleBar";
import { SittingsView } from "./SittingsView";
import { ToldLine, useDoing } from "./Told";
import { UndoLine } from "./UndoLine";
import { useLogbook } from "./useLogbook";
import "../shell/workplace.css";
import "./logbook.css";

// The figures and the files bring much with them that the first rows do not need.
const JobsView = fetchedLater(async () => (await import("./JobsView")).JobsView, null);
const ProgressView = fetchedLater(async () => (await import("./ProgressView")).ProgressView, null);
const FilesView = fetchedLater(async () => (await import("./FilesView")).FilesView, null);

const VIEWS = [
  { view: "attempts", label: "Attempts" },
  { view: "jobs", label: "Jobs" },
  { view: "sittings", label: "Sittings" },
  { view: "progress", label: "Progress" },
  { view: "files", label: "Files" },
] as const;

type View = (typeof VIEWS)[number]["view"];

const PERSONAL_VIEWS = {
  attempts: AttemptsView,
  jobs: JobsView,
  sittings: SittingsView,
  progress: ProgressView,
} as const;

interface NobodyProps {
  readonly current: CurrentLogbook;
  /** Told when people have come, and this goes. */
  readonly onPeople: () => void;
}

function Nobody({ current, onPeople }: NobodyProps) {
  const { told, act } = useDoing();
  const load = async () => {
    const { loadDemo } = await import("./loadDemo");
    const loaded = await loadDemo(current);
    onPeople();
    return loaded;
  };
  return (
    <div className="logbook-hint">
      <p>
        No one is in this logbook yet. Add a person, or dial on the <a href="#/bench">bench</a>. To look around first,
        load the demo, an invented school. You can remove it under <a href="#/logbook?view=files">Files</a>.
      </p>
      <button type="button" className="button" onClick={() => act(load)}>
        Load the demo
      </button>
      <ToldLine told={told} />
    </div>
  );
}

interface ViewOfProps extends NobodyProps {
  readonly view: View;
}

function ViewOf({ current, view, onPeople }: ViewOfProps) {
  const { person } = current;
  if (view === "files") return <FilesView current={current} />;
  if (person === null) return <Nobody current={current} onPeople={onPeople} />;
  const View = PERSONAL_VIEWS[view];
  return <View key={person.id} current={current} personId={person.id} />;
}

/** The logbook: who practices, what was dialed, how it comes on, and the files in and out. */
export function LogbookScreen({ asked }: { readonly asked: string | null }) {
  const current = useLogbook();
  const heading = useRef<HTMLHeadingElement | null>(null);
  const view = VIEWS.find((one) => one.view === asked)?.view ?? "attempts";
  return (
    <main className="logbook">
      <h1 ref={heading} className="visually-hidden" tabIndex={-1}>
        Logbook
      </h1>
      {current !== null && (
        <>
          <PeopleBar current={current} />
          <KeepingLine current={current} />
          <UndoLine current={current} />
          <nav className="logbook-views" aria-label="Parts of the logbook">
            {VIEWS.map((one) => (
              <a
                key={one.view}
                href={`#/logbook?view=${one.view}`}
                aria-current={one.view === view ? "page" : undefined}
              >
                {one.label}
              </a>
            ))}
          </nav>
          <WordsHere>
            <WordLink word="stop-error">stop error</WordLink>
            <WordLink word="arrival">arrival</WordLink>
          </WordsHere>
          <ViewOf current={current} view={view} onPeople={() => heading.current?.focus()} />
        </>
      )}
    </main>
  );
}
