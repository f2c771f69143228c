/** What a hand on the page does first. */
const SIGNS = ["pointermove", "pointerdown", "keydown", "wheel", "focusin"] as const;

/**
 * Acts once somebody is there, a moment before anything can come of it: for what is needed then, and not to see the page.
 *
 * @returns calls it off
 */
export function onFirstSign(act: () => void): () => void {
  const callOff = new AbortController();
  const once = () => {
    callOff.abort();
    act();
  };
  for (const sign of SIGNS) addEventListener(sign, once, { capture: true, passive: true, signal: callOff.signal });
  return () => callOff.abort();
}
