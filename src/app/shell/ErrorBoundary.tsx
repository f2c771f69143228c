import { Component, type ReactNode, useState } from "react";
import { reloadSafely } from "../keeping/keeping";
import { Button } from "../parts/controls/Button";
import { areFilesGone, FILES_GONE_WORDS } from "../parts/page/filesGone";
import { messageOf } from "../parts/page/messageOf";

/** Everything in the logbook as a file; fetched only now, for the page it belongs to may be what failed. */
async function saveLogbook(): Promise<string> {
  const { currentLogbook } = await import("../keeping/currentLogbook");
  const { wholeLogbook } = await import("../../store/wholeLogbook");
  const { exportFile } = await import("../logbook/files/exportFiles");
  const { saveFile } = await import("../parts/files/saveFile");
  const { logbook } = await currentLogbook();
  const file = exportFile("logbook", await wholeLogbook(logbook), { personId: null, now: Date.now() });
  saveFile(file);
  return file.told;
}

/** What is said in the place of a page whose files are gone: nothing has failed but the fetching. */
function FilesGone() {
  const [refusal, setRefusal] = useState<string | null>(null);
  return (
    <main className="failed page gap-4 max-w-[640px]">
      <div role="alert">
        <h1 className="mb-3">This page could not be loaded.</h1>
        <p>{refusal ?? FILES_GONE_WORDS}</p>
      </div>
      <div className="row">
        <Button className="primary" onClick={() => setRefusal(reloadSafely())}>
          Reload
        </Button>
      </div>
    </main>
  );
}

/** What is said in the place of a page that failed, and what can be done. */
function Failed({ error }: { readonly error: unknown }) {
  const [told, setTold] = useState("");
  const save = () =>
    saveLogbook().then(setTold, (failure) =>
      setTold(`The logbook could not be saved: ${messageOf(failure)} Reload the page and try again.`),
    );
  return (
    <main className="failed page gap-4 max-w-[640px]">
      <div role="alert">
        <h1 className="mb-3">This page has failed.</h1>
        <p>
          The fault is in Gatefall, not in what you did. Everything that was saved is still there. Reload the page, or
          go to another one above. If it fails again, save the logbook as a file first.
        </p>
      </div>
      <div className="row">
        <Button className="primary" onClick={() => location.reload()}>
          Reload
        </Button>
        <Button onClick={save}>Save the whole logbook</Button>
      </div>
      <p role="status" className="empty:hidden">
        {told}
      </p>
      <details>
        <summary>What the browser reports</summary>
        <p className="mt-3 text-soft wrap-anywhere">{messageOf(error)}</p>
      </details>
    </main>
  );
}

interface BoundaryProps {
  /** Names what is shown inside; something else gets a chance of its own. */
  readonly place: string;
  readonly children: ReactNode;
}

interface BoundaryState {
  readonly failure: { readonly error: unknown } | null;
}

/** Stands round a page: when drawing it fails, the failure is shown in its place, and the rest of the app goes on. */
export class ErrorBoundary extends Component<BoundaryProps, BoundaryState> {
  override readonly state: BoundaryState = { failure: null };

  /** React asks for what to show after a failure. */
  static getDerivedStateFromError(error: unknown): BoundaryState {
    return { failure: { error } };
  }

  override componentDidUpdate({ place }: BoundaryProps): void {
    if (place !== this.props.place && this.state.failure !== null) this.setState({ failure: null });
  }

  override render(): ReactNode {
    const { failure } = this.state;
    if (failure === null) return this.props.children;
    return areFilesGone(failure.error) ? <FilesGone /> : <Failed error={failure.error} />;
  }
}
