import { useId } from "react";
import type { RecordOf } from "../../../records/records";
import type { Logbook } from "../../../store/logbook";
import { type NotedKind, noteRecord, typedNote } from "./notes";
import { useNote } from "./useNote";

interface RecordNoteProps<Kind extends NotedKind> {
  readonly logbook: Logbook;
  readonly kind: Kind;
  readonly record: RecordOf[Kind];
  readonly onChanged: (record: RecordOf[Kind]) => void;
}

function NoteForm<Kind extends NotedKind>({ logbook, kind, record, onChanged }: RecordNoteProps<Kind>) {
  const id = useId();
  const { typed, isChanged, told, problem, change, save } = useNote(record.id, typedNote(record), async (now) => {
    const noted = await noteRecord(logbook, kind, record, now, Date.now());
    onChanged(noted);
    return typedNote(noted);
  });
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

/** Tags and a note of one record, changed in place; saved when one leaves them. */
export const RecordNote = <Kind extends NotedKind>(props: RecordNoteProps<Kind>) => (
  <NoteForm key={props.record.id} {...props} />
);
