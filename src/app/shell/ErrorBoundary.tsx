import { Component, type ReactNode, useState } from "react";
import { messageOf } from "./messageOf";

/** Everything in the logbook as a file; fetched only now, for the page it belongs to may be what failed. */
async function saveLogbook(): Promise<string> {
  const { currentLogbook } = await import("../logbook/currentLogbook");
  const { wholeLogbook } = await import("../../logbook/wholeLogbook");
  const { exportFile } = await import("../logbook/exportFiles");
  const { saveFile } = await import("../logbook/saveFile");
  const { logbook } = await currentLogbook();
  const file = exportFile("logbook", await wholeLogbook(logbook), { personId: null, now: Date.now() });
  saveFile(file);
  return file.told;
}

/** What is said in the place of a page that failed, and what can be done. */
function Failed({ error }: { readonly error: unknown }) {
  const [told, setTold] = useState("");
  const save = () =>
    saveLogbook().then(setTold, (failure) => setTold(`The logbook could not be saved: ${messageOf(failure)}`));
  return (
    <main className="failed">
      <div role="alert">
        <h1>This page has failed.</h1>
        <p>
          The fault is the trainer’s, not yours. Everything the logbook had taken down is still there. Reload the page,
          or go to another one above; if it fails again, save the logbook first.
        </p>
      </div>
      <div className="failed-acts">
        <button type="button" className="button primary" onClick={() => location.reload()}>
          Reload
        </button>
        <button type="button" className="button" onClick={save}>
          Save the whole logbook
        </button>
      </div>
      <p role="status">{told}</p>
      <details>
        <summary>What the browser says</summary>
        <p>{messageOf(error)}</p>
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

/** Stands round a page: when drawing it fails, the failure is told in its place, and the rest of the app goes on. */
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
    return failure === null ? this.props.children : <Failed error={failure.error} />;
  }
}
