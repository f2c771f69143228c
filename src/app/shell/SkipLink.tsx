import type { MouseEvent } from "react";

/** Puts the focus on the dial of the page, or on its content where there is none. */
function skip(event: MouseEvent): void {
  // The address names the page here, and no place in it.
  event.preventDefault();
  const main = document.querySelector("main");
  const dial = main?.querySelector<HTMLElement>("[role=slider]");
  if (dial === null) main?.setAttribute("tabindex", "-1");
  (dial ?? main)?.focus();
}

/** The first stop of the Tab key: past the head, to what the page is for. It is seen while it has the focus. */
export function SkipLink({ hasDial }: { readonly hasDial: boolean }) {
  return (
    // biome-ignore lint/a11y/useValidAnchor: a link within the page, as readers expect one; the address is taken by the route
    <a className="skip" href="#content" onClick={skip}>
      {hasDial ? "Skip to the dial" : "Skip to the content"}
    </a>
  );
}
