import { useEffect, useRef } from "react";
import type { BenchSession } from "../bench/benchSession";
import type { ZeroingSession } from "../zeroing/zeroingSession";
import { type AttemptNote, AttemptNotes } from "./attemptNote";
import { KeepingQueue } from "./keepingQueue";
import { ZeroingNotes } from "./zeroingNote";

const newId = () => crypto.randomUUID();

/** Comes after whatever the page has to draw: keeping a record never holds up the hand. */
const afterDrawing = (act: () => void) => void setTimeout(act, 0);

const queue = new KeepingQueue(() => import("./keep"));

/** Keeps every attempt of a bench in the logbook when it has ended, and again with the own estimate once it is given. */
export function useKeptAttempts(session: BenchSession): void {
  const notes = useRef(new AttemptNotes(newId));
  useEffect(() => {
    let seen = session.outcome;
    let last: AttemptNote | null = null;
    const keep = (note: AttemptNote) => {
      last = note;
      afterDrawing(() => queue.add(({ keepAttempt }) => keepAttempt(note)));
    };
    const addEstimate = () => {
      const { estimate } = session;
      if (last === null || typeof estimate !== "number" || last.record.estimate !== undefined) return;
      keep({ ...last, record: { ...last.record, estimate, updatedAt: Date.now() } });
    };
    return session.subscribe(() => {
      const { outcome } = session;
      if (outcome === seen) {
        addEstimate();
        return;
      }
      seen = outcome;
      last = null;
      if (outcome !== null) keep(notes.current.note(session, outcome, Date.now()));
    });
  }, [session]);
}

/** Keeps every zeroing in the logbook, when the zero is set or cannot be. */
export function useKeptZeroings(session: ZeroingSession, profileId: string): void {
  useEffect(() => {
    const notes = new ZeroingNotes(profileId, newId);
    return session.subscribe(() => {
      const note = notes.look(session, Date.now());
      if (note !== null) afterDrawing(() => queue.add(({ keepZeroing }) => keepZeroing(note)));
    });
  }, [session, profileId]);
}
