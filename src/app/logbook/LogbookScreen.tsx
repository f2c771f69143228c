import { useRef } from "react";
import type { CurrentLogbook } from "../keeping/currentLogbook";
import { KeepingLine } from "../keeping/KeepingLine";
import { UndoLine } from "../keeping/UndoLine";
import { useLogbook } from "../keeping/useLogbook";
import { Button } from "../parts/controls/Button";
import { fetchedLater } from "../parts/page/fetchedLater";
import { ToldLine, useDoing } from "../parts/Told";
import { WordLink } from "../words/WordLink";
import { WordsHere } from "../words/WordsHere";
import { AttemptsView } from "./attempts/AttemptsView";
import { PeopleBar } from "./people/PeopleBar";
import type { SittingsForgotten } from "./people/PersonSheets";
import { SittingsView } from "./sittings/SittingsView";
import "../parts/workplace.css";
import "./logbook.css";

// The figures and the files bring much with them that the first rows do not need.
const JobsView = fetchedLater(async () => (await import("./jobs/JobsView")).JobsView, null);
const ProgressView = fetchedLater(async () => (await import("./progress/ProgressView")).ProgressView, null);
const FilesView = fetchedLater(async () => (await import("./files/FilesView")).FilesView, null);

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
    const { loadDemo } = await import("./files/loadDemo");
    const loaded = await loadDemo(current);
    onPeople();
    return loaded;
  };
  return (
    <div className="py-5 text-soft">
      <p>
        No one is in this logbook yet. Add a person, or dial on the <a href="#/bench">bench</a>. To look around first,
        load the demo, an invented school. You can remove it under <a href="#/logbook?view=files">Files</a>.
      </p>
      <Button className="mt-4 text-ink" onClick={() => act(load)}>
        Load the demo
      </Button>
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

interface LogbookScreenProps {
  /** The part of it that is asked for. */
  readonly asked: string | null;
  readonly sittingsForgotten: SittingsForgotten;
}

/** The logbook: who practices, what was dialed, how it comes on, and the files in and out. */
export function LogbookScreen({ asked, sittingsForgotten }: LogbookScreenProps) {
  const current = useLogbook();
  const heading = useRef<HTMLHeadingElement | null>(null);
  const view = VIEWS.find((one) => one.view === asked)?.view ?? "attempts";
  return (
    <main className="logbook page gap-4 pt-4">
      <h1 ref={heading} className="visually-hidden" tabIndex={-1}>
        Logbook
      </h1>
      {current !== null && (
        <>
          <PeopleBar {...{ current, sittingsForgotten }} />
          <KeepingLine current={current} />
          <UndoLine current={current} />
          <nav className="tabs" aria-label="Parts of the logbook">
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
