/** Where the browser does not say when it has nothing to do, milliseconds. */
const SOON = 200;

/**
 * Acts once the browser has nothing else to do, after a second at the latest: for what nobody sees and what must be there
 * before anything can come of a hand.
 *
 * @returns calls it off
 */
export function whenIdle(act: () => void): () => void {
  if (globalThis.requestIdleCallback === undefined) {
    const timer = setTimeout(act, SOON);
    return () => clearTimeout(timer);
  }
  const asked = requestIdleCallback(act, { timeout: 1000 });
  return () => cancelIdleCallback(asked);
}
