/** What is about to be asked for: the pointer is over a link, a finger or the focus is on it. */
const SIGNS = ["pointerover", "focusin"] as const;

/**
 * Fetches a page when a link to it is about to be followed. What fails is fetched again when it is asked for.
 *
 * @param fetchPage - fetches the page that an address in this page leads to, if it is one
 * @returns calls it off
 */
export function fetchAhead(fetchPage: (hash: string) => Promise<unknown> | undefined): () => void {
  const onSign = ({ target }: Event) => {
    const link = target instanceof Element ? target.closest("a") : null;
    if (link !== null) fetchPage(link.hash)?.catch(() => undefined);
  };
  for (const sign of SIGNS) addEventListener(sign, onSign);
  return () => {
    for (const sign of SIGNS) removeEventListener(sign, onSign);
  };
}
