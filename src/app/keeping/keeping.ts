import { onPageGone, onPageShownAgain } from "../parts/page/onPageLeft";
import { actNow, afterDrawing } from "./afterDrawing";
import { type Keeper, KeepingQueue } from "./keepingQueue";
import { leaveNotes } from "./leftNotes";

/** Fetches all that keeps records, in pieces: each is made ready by itself, and a hand may be turning a dial meanwhile. */
async function fetchKeeper(): Promise<Keeper> {
  await import("../../lock/fieldSchemas");
  await import("../../records/records");
  await import("../../store/logbookDatabase");
  return import("./keep");
}

/** The way of this page's records to the logbook. */
export const keeping = new KeepingQueue(fetchKeeper);

/** Leaves all that is not certainly stored to the next page, at once: nothing that has to be waited for is done any more. */
function leaveAll(): void {
  actNow();
  leaveNotes(keeping.notes);
  keeping.copyWaiting();
}

/** Sees to it that nothing that is not stored goes with the page. To be called once, before anything is drawn. */
export function watchLeaving(): void {
  onPageGone(leaveAll);
  onPageShownAgain(() => {
    // It lives and has them itself; a copy that stayed would come back later in place of what was changed since.
    leaveNotes([]);
    keeping.copyWaiting();
  });
}

/** Fetches all that keeps records, once the page is drawn, and opens the logbook: nothing of it waits for a record. */
export function startKeeping(): void {
  afterDrawing(() => void keeping.start());
}

/**
 * Reloads the page without losing what waits to be stored.
 *
 * @returns why not, in a sentence; null while the page reloads
 */
export function reloadSafely(): string | null {
  const { waiting, isCopied } = keeping.state;
  if (waiting > 0 && !isCopied)
    return "Not reloaded: what waits exists in this tab only. Save the logbook as a file first, under Logbook, Files.";
  if (!leaveNotes(keeping.notes))
    return "Not reloaded: what waits exists in this tab only, and this browser gives no room to copy it.";
  location.reload();
  return null;
}
