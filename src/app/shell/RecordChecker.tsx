import { type FormEvent, useState } from "react";
import { FileButton } from "./FileButton";
import { messageOf } from "./messageOf";
import { useDroppedFiles } from "./useDroppedFiles";
import "./recordChecker.css";

/** What checking a record came to. */
export interface RecordFinding {
  /** What is wrong, in sentences; none for a sound record. */
  readonly problems: readonly string[];
  /** What differs here but does not speak against the record, and why, in sentences. */
  readonly unheld?: readonly string[];
}

function Sentences({ of }: { readonly of: readonly string[] }) {
  return (
    <ul>
      {of.map((sentence) => (
        <li key={sentence}>{sentence}</li>
      ))}
    </ul>
  );
}

function Finding({ problems, unheld = [], sound }: RecordFinding & { readonly sound: string }) {
  if (problems.length + unheld.length === 0) {
    return (
      <p role="status" className="told-box told-quiet">
        {sound}
      </p>
    );
  }
  return (
    <>
      {problems.length > 0 && (
        <div role="alert" className="told-box">
          <p>The record does not check.</p>
          <Sentences of={problems} />
        </div>
      )}
      {unheld.length > 0 && (
        <div role="status" className="told-box told-quiet">
          <p>Not all of it can be checked by this version.</p>
          <Sentences of={unheld} />
        </div>
      )}
    </>
  );
}

/** What came of a check: a finding, or why there was none. */
type Outcome = { readonly finding: RecordFinding } | { readonly failure: string };

/** Checks a record when asked to, and holds what came of it. */
export function useRecordCheck() {
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const run = async (check: () => Promise<RecordFinding>) => {
    setOutcome(null);
    try {
      setOutcome({ finding: await check() });
    } catch (error) {
      setOutcome({ failure: messageOf(error) });
    }
  };
  return { outcome, run };
}

interface RecordOutcomeProps {
  readonly outcome: Outcome | null;
  /** What is known of a sound record, in a sentence. */
  readonly sound: string;
}

/** What came of a check, told. */
export function RecordOutcome({ outcome, sound }: RecordOutcomeProps) {
  if (outcome === null) return null;
  if ("finding" in outcome) return <Finding {...outcome.finding} sound={sound} />;
  return (
    <p role="alert" className="told-box">
      Not checked: {outcome.failure}.
    </p>
  );
}

interface RecordCheckerProps {
  /** What is known of a sound record, in a sentence. */
  readonly sound: string;
  /** Checks the text of a file. @throws {Error} with what keeps it from being checked, a sentence without its period */
  readonly check: (text: string) => Promise<RecordFinding>;
}

/** A saved record, pasted, loaded or dropped, checked against its hash and against itself. */
export function RecordChecker({ sound, check }: RecordCheckerProps) {
  const [text, setText] = useState("");
  const { outcome, run } = useRecordCheck();
  const checkText = (from: string) => {
    setText(from);
    return run(() => check(from));
  };
  const read = async (file: File | undefined) => {
    if (file !== undefined) await checkText(await file.text());
  };
  const isOver = useDroppedFiles(([file]) => read(file));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    checkText(text);
  };
  return (
    <section aria-label="Check a record" className={isOver ? "record-check record-check-over" : "record-check"}>
      <h2>
        Check a record <small>a hash shows a change; it is no signature</small>
      </h2>
      <form onSubmit={submit}>
        <textarea
          aria-label="A saved record"
          placeholder='{"sha256":"…","record":{…}}'
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <div className="record-check-row">
          <button type="submit" className="button" disabled={text.trim() === ""}>
            Check it
          </button>
          <FileButton accept=".json" onFile={read}>
            Load a file
          </FileButton>
          <small>or drop a file anywhere on this page</small>
        </div>
      </form>
      <RecordOutcome outcome={outcome} sound={sound} />
    </section>
  );
}
