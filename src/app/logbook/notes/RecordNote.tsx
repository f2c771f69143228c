import type { RecordOf } from "../../../records/records";
import type { Logbook } from "../../../store/logbook";
import { NoteEditor } from "./NoteEditor";
import { type NotedKind, noteRecord, typedNote } from "./notes";

interface RecordNoteProps<Kind extends NotedKind> {
  readonly logbook: Logbook;
  readonly kind: Kind;
  readonly record: RecordOf[Kind];
  readonly onChanged: (record: RecordOf[Kind]) => void;
}

/** What is noted of a record, changed in place. */
export function RecordNote<Kind extends NotedKind>({ logbook, kind, record, onChanged }: RecordNoteProps<Kind>) {
  return (
    <NoteEditor
      key={record.id}
      recordId={record.id}
      kept={typedNote(record)}
      onKeep={async (typed) => {
        const noted = await noteRecord(logbook, kind, record, typed, Date.now());
        onChanged(noted);
        return typedNote(noted);
      }}
    />
  );
}
