import { useEffect } from "react";
import type { Milliseconds } from "../../lock/dial";
import type { BenchSession } from "../bench/benchSession";
import { newId } from "../shell/newId";
import { onPageLeft } from "../shell/onPageLeft";
import { watchWork } from "../shell/underWay";
import type { ZeroingSession } from "../zeroing/zeroingSession";
import { AttemptKeeping } from "./attemptKeeping";
import type { AttemptNote } from "./attemptNote";
import { keeping } from "./keeping";
import { ZeroingNotes } from "./zeroingNote";

/** Comes after whatever the page has to draw: keeping a record never holds up the hand. */
const afterDrawing = (act: () => void) => void setTimeout(act, 0);

/** How often an attempt under way is kept: so much of it may be lost with the page, milliseconds. */
const FLUSH_EVERY: Milliseconds = 1000;

/** An unfinished attempt is kept at once: it is only flushed between the hand's moves, or while the page goes. */
const keepNote = (note: AttemptNote) => {
  const keep = () => void keeping.keep({ kind: "attempt", note });
  if (note.record.isUnfinished === true) keep();
  else afterDrawing(keep);
};

const dropAttempt = (id: string) => afterDrawing(() => keeping.add((keeper) => keeper.dropAttempt(id)));

const once = (act: () => void) => {
  let isDone = false;
  return () => {
    if (!isDone) act();
    isDone = true;
  };
};

/** Keeps every attempt of a bench in the logbook: while it is under way, when it has ended, and with its estimate. */
export function useKeptAttempts(session: BenchSession): void {
  useEffect(() => {
    const watched = new AttemptKeeping(session, newId, { keep: keepNote, drop: dropAttempt });
    const flush = () => watched.flush(Date.now());
    const openUp = once(() => afterDrawing(() => keeping.add((keeper) => keeper.openUp())));
    const timer = setInterval(flush, FLUSH_EVERY);
    const look = () => {
      openUp();
      watched.look(Date.now());
    };
    const ends = [session.subscribe(look), onPageLeft(flush), watchWork(() => watched.endedByReload)];
    return () => {
      clearInterval(timer);
      for (const end of ends) end();
      flush();
    };
  }, [session]);
}

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
