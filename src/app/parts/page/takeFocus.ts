/** The `ref` of what takes the focus as it comes onto the page. */
export const takeFocus = (element: HTMLElement | null): void => element?.focus();
