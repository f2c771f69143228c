import { type MouseEvent, useState } from "react";

const dialOf = (main: HTMLElement | null) => main?.querySelector<HTMLElement>("[role=slider]") ?? null;

/** Puts the focus on the dial of the page, or on its content where there is none. */
function skip(event: MouseEvent): void {
  // The address names the page here, and no place in it.
  event.preventDefault();
  const main = document.querySelector("main");
  const dial = dialOf(main);
  if (dial === null) main?.setAttribute("tabindex", "-1");
  (dial ?? main)?.focus();
  dial?.scrollIntoView({ block: "nearest" });
}

/** The first stop of the Tab key: past the head, to what the page is for. It is seen while it has the focus. */
export function SkipLink({ hasDial }: { readonly hasDial: boolean }) {
  // A station or a part of a job may have a dial too.
  const [found, setFound] = useState(false);
  const look = () => setFound(dialOf(document.querySelector("main")) !== null);
  return (
    // biome-ignore lint/a11y/useValidAnchor: a link within the page, as readers expect one; the address is taken by the route
    <a className="skip" href="#content" onClick={skip} onFocus={look}>
      {hasDial || found ? "Skip to the dial" : "Skip to the content"}
    </a>
  );
}
