import { useEffect } from "react";
import { afterDrawing } from "../../keeping/afterDrawing";
import { keeping } from "../../keeping/keeping";
import { newId } from "../../parts/page/newId";
import type { ZeroingSession } from "./session/zeroingSession";
import { ZeroingNotes } from "./zeroingNotes";

/** Keeps every zeroing in the logbook: with each reading, and when the zero is set or cannot be. */
export function useKeptZeroings(session: ZeroingSession, profileId: string): void {
  useEffect(() => {
    const notes = new ZeroingNotes(profileId, newId);
    return session.subscribe(() => {
      const note = notes.look(session, Date.now());
      if (note !== null) afterDrawing(() => keeping.keep({ kind: "zeroing", note }));
    });
  }, [session, profileId]);
}
