import { parseSheet } from "../../../drill/sheet/parseSheet";
import type { Sheet } from "../../../drill/sheet/sheet";
import { openShelf } from "./openShelf";

/** A sheet that is whole; one that is half done is no sheet yet. */
function wholeSheet(body: unknown): Sheet[] {
  try {
    return [parseSheet(body)];
  } catch {
    return [];
  }
}

/** No check waits longer for the logbook, milliseconds. */
const PATIENCE = 1500;

/** Own sheets of this browser that can be sat: those that are here by then. */
export async function ownSheets(): Promise<readonly Sheet[]> {
  const shelf = openShelf();
  if (!shelf.isReady) {
    await new Promise<void>((resolve) => {
      setTimeout(resolve, PATIENCE);
      shelf.subscribe(() => shelf.isReady && resolve());
    });
  }
  return shelf.own.flatMap(({ body }) => wholeSheet(body));
}
