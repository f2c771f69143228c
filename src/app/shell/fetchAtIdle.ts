/** Safari tells nobody when it is idle; by then the first page has long been drawn, milliseconds. */
const LATER = 2000;

/**
 * Fetches parts of the app while nothing else is to do, so that they come at once when they are asked for. What fails is
 * fetched again when it is asked for.
 *
 * @returns calls it off
 */
export function fetchAtIdle(parts: readonly (() => Promise<unknown>)[]): () => void {
  const fetchAll = () => {
    for (const part of parts) part().catch(() => undefined);
  };
  if ("requestIdleCallback" in window) {
    const idle = requestIdleCallback(fetchAll);
    return () => cancelIdleCallback(idle);
  }
  const timer = setTimeout(fetchAll, LATER);
  return () => clearTimeout(timer);
}
