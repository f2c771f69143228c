import { useId } from "react";
import type { TypedNote } from "./notes";
import { useNote } from "./useNote";

interface NoteEditorProps {
  /** Of the record that it is about. */
  readonly recordId: string;
  /** As they are saved. */
  readonly kept: TypedNote;
  /** Saves what was typed. @returns it as it is saved */
  readonly onKeep: (typed: TypedNote) => Promise<TypedNote>;
}

/** Tags and a note of one record, changed in place; saved when one leaves them. */
export function NoteEditor({ recordId, kept, onKeep }: NoteEditorProps) {
  const id = useId();
  const { typed, isChanged, told, problem, change, save } = useNote(recordId, kept, onKeep);
  return (
    <form
      className="grid gap-2"
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
      onBlur={({ currentTarget, relatedTarget }) => {
        if (!currentTarget.contains(relatedTarget)) save();
      }}
    >
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
      <label htmlFor={`${id}-note`} className="mt-3">
        Note
      </label>
      <textarea
        id={`${id}-note`}
        className="field"
        rows={2}
        value={typed.note}
        aria-describedby={`${id}-told`}
        onChange={(event) => change({ note: event.currentTarget.value })}
      />
      <div className="row mt-4" id={`${id}-told`}>
        <button type="submit" className="button" disabled={!isChanged || problem !== null}>
          Save tags and note
        </button>
        <span role="status">{told}</span>
        {problem !== null && <span role="alert">{problem}</span>}
      </div>
    </form>
  );
}
