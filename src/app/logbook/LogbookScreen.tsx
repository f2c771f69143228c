import { fetchedLater } from "../shell/fetchedLater";
import { AttemptsView } from "./AttemptsView";
import type { CurrentLogbook } from "./currentLogbook";
import { KeepingLine } from "./KeepingLine";
import { PeopleBar } from "./PeopleBar";
import { SittingsView } from "./SittingsView";
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

function Nobody() {
  return (
    <p className="logbook-hint">
      Nobody is here yet. Add a person, dial at the bench, or load the demo under{" "}
      <a href="#/logbook?view=files">Files</a>.
    </p>
  );
}

function ViewOf({ current, view }: { readonly current: CurrentLogbook; readonly view: View }) {
  const { person } = current;
  if (view === "files") return <FilesView current={current} />;
  if (person === null) return <Nobody />;
  const View = PERSONAL_VIEWS[view];
  return <View key={person.id} current={current} personId={person.id} />;
}

/** The logbook: who practices, what was dialed, how it comes on, and the files in and out. */
export function LogbookScreen({ asked }: { readonly asked: string | null }) {
  const current = useLogbook();
  const view = VIEWS.find((one) => one.view === asked)?.view ?? "attempts";
  return (
    <main className="logbook">
      <h1 className="visually-hidden">Logbook</h1>
      {current !== null && (
        <>
          <PeopleBar current={current} />
          <KeepingLine current={current} />
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
          <ViewOf current={current} view={view} />
        </>
      )}
    </main>
  );
}
