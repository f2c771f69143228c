/**
 * Hears of the last moments in which a page can still act: when it is hidden, and when it goes. A hidden page may be
 * ended without another word.
 *
 * @returns stops listening
 */
export function onPageLeft(act: () => void): () => void {
  const hidden = () => document.visibilityState === "hidden" && act();
  document.addEventListener("visibilitychange", hidden);
  addEventListener("pagehide", act);
  return () => {
    document.removeEventListener("visibilitychange", hidden);
    removeEventListener("pagehide", act);
  };
}

/** Hears of the page's end alone. @returns stops listening */
export function onPageGone(act: () => void): () => void {
  addEventListener("pagehide", act);
  return () => removeEventListener("pagehide", act);
}
