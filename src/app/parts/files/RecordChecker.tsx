import { type FormEvent, useId, useState } from "react";
import { Lines } from "../Lines";
import { NamedValues } from "../NamedValues";
import { Notice } from "../Notice";
import { messageOf } from "../page/messageOf";
import { CHECK_LIMIT, FAILS_CHECK } from "./checkWords";
import { FileButton } from "./FileButton";
import { useDroppedFiles } from "./useDroppedFiles";

/** What checking a record came to. */
export interface RecordFinding {
  /** What is wrong, in sentences; none for a sound record. */
  readonly problems: readonly string[];
  /** What differs here but does not speak against the record, and why, in sentences. */
  readonly unheld?: readonly string[];
  /** What one should know of a sound record, in sentences. */
  readonly remarks?: readonly string[];
  /** What was not checked, in sentences. */
  readonly unchecked?: readonly string[];
  /** What the record says, by name. */
  readonly says?: readonly (readonly [name: string, value: string])[];
}

interface BoxProps {
  readonly head: string;
  readonly sentences: readonly string[];
  readonly isWrong?: boolean;
}

/** Sentences about a record under what they mean for it; nothing where there are none. */
function Box({ head, sentences, isWrong = false }: BoxProps) {
  if (sentences.length === 0) return null;
  return (
    <div role={isWrong ? "alert" : "status"} className={isWrong ? "notice mt-4" : "notice mt-4 border-line"}>
      <p>{head}</p>
      <Lines of={sentences} />
    </div>
  );
}

/** Says that a record does not check, and why; nothing of one that does. */
export const NotSound = ({ problems }: Pick<RecordFinding, "problems">) => (
  <Box head={FAILS_CHECK} sentences={problems} isWrong />
);

function Finding({ finding, sound }: { readonly finding: RecordFinding; readonly sound: string }) {
  const { problems, unheld = [], remarks = [], unchecked = [], says = [] } = finding;
  const isSound = problems.length + unheld.length + unchecked.length === 0;
  return (
    <>
      {says.length > 0 && <NamedValues rows={says} label="What the record says" />}
      {isSound && (
        <div role="status" className="notice mt-4 border-line">
          <p>{sound}</p>
          {remarks.length > 0 && <Lines of={remarks} />}
        </div>
      )}
      <NotSound problems={problems} />
      <Box head="This version cannot check all of it." sentences={unheld} />
      <Box head="Not checked:" sentences={unchecked} />
      <p className="max-w-[68ch] mt-3 text-soft text-small">{CHECK_LIMIT}</p>
    </>
  );
}

/** What came of a check: a finding, or why there was none. */
type Outcome = { readonly finding: RecordFinding } | { readonly failure: string };

/** Checks a record when asked to, and holds what came of it. */
export function useRecordCheck() {
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const run = async (check: () => RecordFinding | Promise<RecordFinding>) => {
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

/** What came of a check, in words. */
export function RecordOutcome({ outcome, sound }: RecordOutcomeProps) {
  if (outcome === null) return null;
  if ("finding" in outcome) return <Finding finding={outcome.finding} sound={sound} />;
  return <Notice>Not checked: {outcome.failure}.</Notice>;
}

interface RecordCheckerProps {
  /** What is known of a sound record, in a sentence. */
  readonly sound: string;
  /** Checks the text of a file. @throws {Error} with what keeps it from being checked, a sentence without its period */
  readonly check: (text: string) => RecordFinding | Promise<RecordFinding>;
}

/** A saved record, pasted, loaded or dropped, checked against its hash and against itself. */
export function RecordChecker({ sound, check }: RecordCheckerProps) {
  const [text, setText] = useState("");
  const whyId = useId();
  const isEmpty = text.trim() === "";
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
    <section aria-label="Check a record" className="record-check max-w-[856px]">
      <h2 className="mb-3">
        Check a record <small>a hash shows a change; it is not a signature</small>
      </h2>
      <form onSubmit={submit}>
        <textarea
          className={isOver ? "bg-plate border-accent outline-2 outline-accent" : "bg-plate"}
          aria-label="A saved record"
          placeholder='{"sha256":"…","record":{…}}'
          value={text}
          onChange={(event) => setText(event.currentTarget.value)}
        />
        <div className="row mt-3">
          <button type="submit" className="button" disabled={isEmpty} aria-describedby={isEmpty ? whyId : undefined}>
            Check it
          </button>
          <FileButton accept=".json" onFile={read}>
            Load a file
          </FileButton>
          <small className="pointer-coarse:hidden">or drop a file anywhere on this page</small>
        </div>
        {isEmpty && <small id={whyId}>Paste a record above to check it, or load its file.</small>}
      </form>
      <RecordOutcome outcome={outcome} sound={sound} />
    </section>
  );
}
