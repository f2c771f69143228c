import { useEffect } from "react";
import type { JobNote } from "../../records/job/jobNote";
import { newId } from "../parts/page/newId";
import type { Store } from "../parts/page/store";
import { afterDrawing } from "./afterDrawing";
import { keeping } from "./keeping";

/** Watches an exercise for jobs that have ended. */
interface JobNotes {
  readonly look: (now: number, steady_ms: number) => JobNote | null;
}

/** Keeps every job of an exercise in the logbook when it has ended. @param Notes - what watches it, of this very kind */
export function useKeptJobs<Session extends Store>(
  session: Session,
  Notes: new (session: Session, newId: () => string) => JobNotes,
): void {
  useEffect(() => {
    const notes = new Notes(session, newId);
    return session.subscribe(() => {
      const note = notes.look(Date.now(), performance.now());
      if (note !== null) afterDrawing(() => keeping.keep({ kind: "job", note }));
    });
  }, [session, Notes]);
}
