/** Gives the keys back to the dial of the page, without scrolling to it. */
export function focusDial(): void {
  document.querySelector<HTMLElement>(".dial")?.focus({ preventScroll: true });
}
