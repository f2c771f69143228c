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

interface RecordFindingsProps extends RecordFinding {
  /** What is known of a sound one, in a sentence. */
  readonly sound: string;
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

/** What checking a record came to, told. */
export function RecordFindings({ problems, unheld = [], sound }: RecordFindingsProps) {
  if (problems.length + unheld.length === 0) {
    return (
      <p role="status" className="record-sound">
        {sound}
      </p>
    );
  }
  return (
    <>
      {problems.length > 0 && (
        <div role="alert" className="record-problem">
          <p>The record does not check.</p>
          <Sentences of={problems} />
        </div>
      )}
      {unheld.length > 0 && (
        <div role="status" className="record-unheld">
          <p>Not all of it can be checked by this version.</p>
          <Sentences of={unheld} />
        </div>
      )}
    </>
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
  const [finding, setFinding] = useState<RecordFinding | null>(null);
  const [failure, setFailure] = useState<string | null>(null);
  const run = async (from: string) => {
    setText(from);
    setFinding(null);
    setFailure(null);
    try {
      setFinding(await check(from));
    } catch (error) {
      setFailure(messageOf(error));
    }
  };
  const read = async (file: File | undefined) => {
    if (file !== undefined) await run(await file.text());
  };
  const isOver = useDroppedFiles(([file]) => read(file));
  const submit = (event: FormEvent) => {
    event.preventDefault();
    run(text);
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
      {finding !== null && <RecordFindings problems={finding.problems} unheld={finding.unheld ?? []} sound={sound} />}
      {failure !== null && (
        <p role="alert" className="record-problem">
          Not checked: {failure}.
        </p>
      )}
    </section>
  );
}
