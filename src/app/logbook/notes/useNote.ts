import { useEffect, useRef, useState } from "react";
import { messageOf } from "../../parts/page/messageOf";
import { onPageLeft } from "../../parts/page/onPageLeft";
import { draftOf, holdDraft } from "./noteDrafts";
import { noteProblem, type TypedNote } from "./notes";

/** A note under the hand. */
export interface NoteEditing {
  readonly typed: TypedNote;
  readonly isChanged: boolean;
  /** What came of the last saving. */
  readonly told: string;
  /** What to fix before it can be saved, or why it could not be. */
  readonly problem: string | null;
  readonly change: (part: Partial<TypedNote>) => void;
  /** Saves what has changed, where it can be saved. */
  readonly save: () => void;
}

const isSame = (one: TypedNote, other: TypedNote) => one.tags === other.tags && one.note === other.note;

/**
 * Tags and a note of one record as they are typed: held at every key, saved when the field, the record or the page is left.
 *
 * @param kept - as they are saved
 * @param onKeep - saves; gives them back as they are saved
 */
export function useNote(
  recordId: string,
  kept: TypedNote,
  onKeep: (typed: TypedNote) => Promise<TypedNote>,
): NoteEditing {
  const [typed, setTyped] = useState(() => draftOf(recordId) ?? kept);
  const [told, setTold] = useState("");
  const [failure, setFailure] = useState<string | null>(null);
  const problem = noteProblem(typed) ?? failure;
  const save = () => {
    if (isSame(typed, kept)) return holdDraft(recordId, null);
    if (noteProblem(typed) !== null) return;
    onKeep(typed).then(
      (now) => {
        holdDraft(recordId, null);
        // What was typed on the way is not taken back.
        setTyped((latest) => (isSame(latest, typed) ? now : latest));
        setTold("Saved.");
      },
      (error) => setFailure(messageOf(error)),
    );
  };
  const latest = useRef(save);
  latest.current = save;
  useEffect(() => {
    const leave = () => latest.current();
    const stop = onPageLeft(leave);
    return () => {
      stop();
      leave();
    };
  }, []);
  const change = (part: Partial<TypedNote>) => {
    const next = { ...typed, ...part };
    holdDraft(recordId, next);
    setTyped(next);
    setTold("");
    setFailure(null);
  };
  return { typed, isChanged: !isSame(typed, kept), told, problem, change, save };
}
