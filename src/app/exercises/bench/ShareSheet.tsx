import { type FormEvent, useState } from "react";
import { parseAttemptLine, type RecordedAttempt } from "../../../trace/recordedAttempt";
import { TraceError } from "../../../trace/traceError";
import { traceProblem } from "../../../trace/traceWords";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";
import { copyText } from "../../parts/files/copyText";
import { FileButton } from "../../parts/files/FileButton";
import { Notice } from "../../parts/Notice";
import { messageOf } from "../../parts/page/messageOf";

interface ShareSheetProps {
  readonly isOpen: boolean;
  readonly onClose: () => void;
  /** The shown attempt in the replay format, or null before the first motion and where none is kept. */
  readonly line: string | null;
  readonly isMotionKept: boolean;
  readonly onLoad: (recorded: RecordedAttempt) => void;
}

/** The one line of text that is not blank. @throws {TraceError} where there are several */
function onlyLine(text: string): string {
  const lines = text.split("\n").filter((line) => line.trim() !== "");
  if (lines.length > 1) throw new TraceError(traceProblem("many-attempts", [], { count: lines.length }));
  return lines[0] ?? "";
}

function CopyAttempt({ line, isMotionKept }: Pick<ShareSheetProps, "line" | "isMotionKept">) {
  const [said, setSaid] = useState("");
  if (!isMotionKept) return <p className="text-soft">You chose to keep no motions of your dial: nothing to share.</p>;
  if (line === null)
    return <p className="text-soft">You have not dialed yet. Turn the dial first, then share the attempt here.</p>;
  const copy = async () =>
    setSaid(
      (await copyText(line))
        ? "Copied."
        : "This browser does not let the page copy. Select the text and copy it yourself.",
    );
  return (
    <>
      <textarea readOnly aria-label="This attempt in the replay format" value={line} />
      <div className="row mt-4">
        <Button onClick={copy}>Copy</Button>
        <a
          className="button"
          download="attempt.jsonl"
          href={`data:application/x-ndjson;charset=utf-8,${encodeURIComponent(`${line}\n`)}`}
        >
          Save as a file
        </a>
        <span role="status">{said}</span>
      </div>
    </>
  );
}

function LoadAttempt({ onLoad, onClose }: Pick<ShareSheetProps, "onLoad" | "onClose">) {
  const [text, setText] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const load = (from: string) => {
    setText(from);
    try {
      onLoad(parseAttemptLine(onlyLine(from)));
      onClose();
    } catch (error) {
      setProblem(messageOf(error));
    }
  };
  const submit = (event: FormEvent) => {
    event.preventDefault();
    load(text);
  };
  const readFile = async (file: File) => load(await file.text());
  return (
    <form onSubmit={submit}>
      <textarea
        aria-label="A recorded attempt to load"
        placeholder='{"profile":"three-wheel","combination":[…],"positions":[…]}'
        value={text}
        onChange={(event) => setText(event.currentTarget.value)}
      />
      {problem !== null && <Notice>Not loaded: {problem}. Your text is still here.</Notice>}
      <div className="row mt-4">
        <Button type="submit" className="primary" disabled={text.trim() === ""}>
          Load and replay
        </Button>
        <FileButton accept=".jsonl,.json,.txt" onFile={readFile}>
          Load a file
        </FileButton>
      </div>
    </form>
  );
}

/** Copies the shown attempt in the replay format, or loads one to look at. */
export function ShareSheet({ isOpen, onClose, line, isMotionKept, onLoad }: ShareSheetProps) {
  return (
    <Dialog title="Share an attempt" isOpen={isOpen} onClose={onClose}>
      <CopyAttempt line={line} isMotionKept={isMotionKept} />
      <h2 className="mt-6 mb-3">Load an attempt</h2>
      <LoadAttempt onLoad={onLoad} onClose={onClose} />
    </Dialog>
  );
}
