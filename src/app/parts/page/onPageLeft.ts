/**
 * Hears of the last moments in which a page can still act: when it is hidden, and when it goes. A hidden page may be
 * ended without another word.
 *
 * @returns stops listening
 */
export function onPageLeft(act: () => void): () => void {
  const hidden = () => document.visibilityState === "hidden" && act();
  document.addEventListener("visibilitychange", hidden);
  // Before those that hear of the page's end alone: they leave to the next page what is noted now.
  addEventListener("pagehide", act, { capture: true });
  return () => {
    document.removeEventListener("visibilitychange", hidden);
    removeEventListener("pagehide", act, { capture: true });
  };
}

/** Hears of the page's end alone, after those that act when it is left. @returns stops listening */
export function onPageGone(act: () => void): () => void {
  addEventListener("pagehide", act);
  return () => removeEventListener("pagehide", act);
}

/** Hears that a page that had gone is shown again as it was. */
export function onPageShownAgain(act: () => void): void {
  addEventListener("pageshow", ({ persisted }) => persisted && act());
}
