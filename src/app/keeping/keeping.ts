import { onPageGone } from "../parts/page/onPageLeft";
import { KeepingQueue } from "./keepingQueue";
import { leaveNotes } from "./leftNotes";

/** The way of this page's records to the logbook. */
export const keeping = new KeepingQueue(() => import("./keep"));

/** Fetches what keeps records beside the first screen, and opens the logbook: nothing of it is fetched later. */
export function startKeeping(): void {
  onPageGone(() => void leaveNotes(keeping.notes));
  setTimeout(() => void keeping.start(), 0);
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
