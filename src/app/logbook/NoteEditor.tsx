import { type FormEvent, useId, useState } from "react";
import { messageOf } from "../shell/messageOf";
import { noteProblem, type TypedNote } from "./notes";

interface NoteEditorProps {
  /** As they are kept. */
  readonly kept: TypedNote;
  /** Keeps what was typed. @returns it as it is kept */
  readonly onKeep: (typed: TypedNote) => Promise<TypedNote>;
}

/** Tags and a note of one record, changed in place. */
export function NoteEditor({ kept, onKeep }: NoteEditorProps) {
  const id = useId();
  const [typed, setTyped] = useState(kept);
  const [told, setTold] = useState("");
  const [problem, setProblem] = useState<string | null>(null);
  const change = (part: Partial<TypedNote>) => {
    const next = { ...typed, ...part };
    setTyped(next);
    setTold("");
    setProblem(noteProblem(next));
  };
  const keep = (event: FormEvent) => {
    event.preventDefault();
    if (problem !== null) return;
    onKeep(typed).then(
      (now) => {
        setTyped(now);
        setTold("Kept.");
      },
      (error) => setProblem(messageOf(error)),
    );
  };
  const isChanged = typed.tags !== kept.tags || typed.note !== kept.note;
  return (
    <form className="note-editor" onSubmit={keep}>
      <label htmlFor={`${id}-tags`}>
        Tags <small>with commas between</small>
      </label>
      <input
        id={`${id}-tags`}
        className="field"
        autoComplete="off"
        value={typed.tags}
        aria-invalid={problem !== null}
        aria-describedby={`${id}-told`}
        onChange={(event) => change({ tags: event.currentTarget.value })}
      />
      <label htmlFor={`${id}-note`}>Note</label>
      <textarea
        id={`${id}-note`}
        className="field"
        rows={2}
        value={typed.note}
        aria-describedby={`${id}-told`}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
      <div className="sheet-row" id={`${id}-told`}>
        <button type="submit" className="button" disabled={!isChanged || problem !== null}>
          Keep tags and note
        </button>
        <span role="status">{told}</span>
        {problem !== null && <span role="alert">{problem}</span>}
      </div>
    </form>
  );
}
