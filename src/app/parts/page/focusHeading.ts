/** Puts the focus on the page's heading, where reading begins when what had the focus is gone. */
export function focusHeading(): void {
  document.querySelector<HTMLElement>("main h1")?.focus({ preventScroll: true });
}
