import { type FormEvent, useState } from "react";
import { checkRecord, type RecordCheck } from "../../drill/checkRecord";
import { FileButton } from "../shell/FileButton";
import { messageOf } from "../shell/messageOf";
import { browserSha256, checkRecordFile } from "./recordFile";
import type { KeptRecord } from "./sittingShelf";

function Findings({ check }: { readonly check: RecordCheck }) {
  if (check.problems.length === 0) {
    return (
      <p role="status" className="sitting-sound">
        The record is sound: it is unchanged since its hash was made, its tries and answers fit its sheet, and its marks
        follow from them.
      </p>
    );
  }
  return (
    <div role="alert" className="sitting-problem">
      <p>The record does not check.</p>
      <ul>
        {check.problems.map((problem) => (
          <li key={problem}>{problem}</li>
        ))}
      </ul>
    </div>
  );
}

/** Checks the record that is shown. */
export function CheckThis({ kept }: { readonly kept: KeptRecord }) {
  const [check, setCheck] = useState<RecordCheck | null>(null);
  const run = () => checkRecord(kept.record, kept.sha256, browserSha256).then(setCheck);
  return (
    <>
      <button type="button" className="button sitting-noprint" onClick={run}>
        Check this record
      </button>
      {check !== null && <Findings check={check} />}
    </>
  );
}

/** A saved record, pasted or loaded, checked against its hash and marked again. */
export function CheckRecord() {
  const [text, setText] = useState("");
  const [check, setCheck] = useState<RecordCheck | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const run = async (from: string) => {
    setText(from);
    setCheck(null);
    setProblem(null);
    try {
      setCheck(await checkRecordFile(from, browserSha256));
    } catch (error) {
      setProblem(messageOf(error));
    }
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    run(text);
  };
  return (
    <section aria-label="Check a record" className="sitting-check">
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
        <div className="sitting-buttons">
          <button type="submit" className="button" disabled={text.trim() === ""}>
            Check it
          </button>
          <FileButton accept=".json" onFile={async (file) => run(await file.text())}>
            Load a file
          </FileButton>
        </div>
      </form>
      {check !== null && <Findings check={check} />}
      {problem !== null && (
        <p role="alert" className="sitting-problem">
          Not checked: {problem}.
        </p>
      )}
    </section>
  );
}
