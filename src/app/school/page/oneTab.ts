import { newId } from "../../parts/page/newId";
import { storedText, storeText, type TextStore } from "../../parts/storage/pageStore";

const NAME = "gatefall-sending";
/** How long a tab may send without saying that it still does, ms: longer than one answer may take. */
const LEASE_MS = 60_000;
const OWN = newId();

/** What says which tab sends. */
export interface TabWorld {
  /** Undefined where the browser has none: it gives locks only on https and on the own machine. */
  readonly locks: Pick<LockManager, "request"> | undefined;
  readonly store: TextStore;
  /** Milliseconds since 1970. */
  readonly now: () => number;
}

/** Whether another tab said a short while ago that it sends. */
function isTaken({ store, now }: TabWorld): boolean {
  const [tab, until] = (storedText(NAME, store) ?? "").split(" ");
  const left_ms = Number(until) - now();
  return tab !== OWN && left_ms > 0 && left_ms <= LEASE_MS;
}

/**
 * Acts unless another tab is at it. Without locks of the browser a note in its storage stands for one; where two tabs still send
 * at once, the server takes each record once.
 *
 * @returns whether this tab acted
 */
export async function inOneTab(act: () => Promise<void>, world: TabWorld): Promise<boolean> {
  if (world.locks !== undefined) {
    return world.locks.request(NAME, { ifAvailable: true }, async (lock) => {
      if (lock === null) return false;
      await act();
      return true;
    });
  }
  if (isTaken(world)) return false;
  storeText(NAME, `${OWN} ${world.now() + LEASE_MS}`, world.store);
  try {
    await act();
  } finally {
    storeText(NAME, null, world.store);
  }
  return true;
}
