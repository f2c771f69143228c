import { useEffect } from "react";
import type { Milliseconds } from "../../../lock/dial";
import { afterDrawing } from "../../keeping/afterDrawing";
import { DIALED_HERE } from "../../keeping/here/dialedHere";
import { keeping } from "../../keeping/keeping";
import type { NotedAttempt } from "../../keeping/notedAttempt";
import { newId } from "../../parts/page/newId";
import { onPageLeft } from "../../parts/page/onPageLeft";
import { watchWork } from "../../parts/page/underWay";
import { AttemptKeeping } from "./attemptKeeping";
import type { BenchSession } from "./benchSession";

/** How often an attempt under way is kept: so much of it may be lost with the page, milliseconds. */
const FLUSH_EVERY: Milliseconds = 1000;

/** An unfinished attempt is kept at once: it is only flushed between the hand's moves, or while the page goes. */
const keepNote = (note: NotedAttempt) => {
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
    DIALED_HERE.bench = session;
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
      DIALED_HERE.bench = null;
      clearInterval(timer);
      for (const end of ends) end();
      flush();
    };
  }, [session]);
}
