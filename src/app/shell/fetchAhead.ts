/** What is about to be asked for: the pointer is over it, a finger or the focus is on it. */
const SIGNS = ["pointerover", "focusin"] as const;

interface Fetches {
  /** Fetches the page that an address in this page leads to, if it is one. */
  readonly page: (hash: string) => Promise<unknown> | undefined;
  /** Fetches what every dialog is drawn by. */
  readonly dialog: () => Promise<unknown>;
}

/**
 * Fetches a page when a link to it is about to be followed, and dialogs when one is about to be opened. What fails is
 * fetched again when it is asked for.
 *
 * @returns calls it off
 */
export function fetchAhead({ page, dialog }: Fetches): () => void {
  const onSign = ({ target }: Event) => {
    const asked = target instanceof Element ? target.closest("a, [aria-haspopup=dialog]") : null;
    if (asked?.ariaHasPopup === "dialog") dialog().catch(() => undefined);
    else if (asked instanceof HTMLAnchorElement) page(asked.hash)?.catch(() => undefined);
  };
  for (const sign of SIGNS) addEventListener(sign, onSign);
  return () => {
    for (const sign of SIGNS) removeEventListener(sign, onSign);
  };
}
