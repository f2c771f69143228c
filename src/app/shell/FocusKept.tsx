import { type ReactNode, useLayoutEffect } from "react";

const CAN_HAVE_FOCUS = "a, button, [tabindex]";

/** Which of those that can have the focus had it last in what the page showed before the app; -1 where none had. */
let focused = -1;
/** Aborted once the app is drawn: from then on the focus is its own. */
const watch = new AbortController();

/**
 * Watches where the focus is in what the page itself shows, which the app takes the place of.
 *
 * @param root - what the app is drawn in
 */
export function watchFocus(root: HTMLElement): void {
  const look = () => {
    const all: readonly Element[] = [...root.querySelectorAll(CAN_HAVE_FOCUS)];
    focused = document.activeElement === null ? -1 : all.indexOf(document.activeElement);
  };
  look();
  root.addEventListener("focusin", look, { signal: watch.signal });
}

/** Gives the focus back to the same of the app that had it before: the two begin alike. */
export function FocusKept({ root, children }: { readonly root: HTMLElement; readonly children: ReactNode }) {
  useLayoutEffect(() => {
    watch.abort();
    if (focused >= 0) root.querySelectorAll<HTMLElement>(CAN_HAVE_FOCUS)[focused]?.focus({ preventScroll: true });
    focused = -1;
  }, [root]);
  return children;
}
