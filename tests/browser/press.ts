import type { Locator } from "@playwright/test";

/** How a button is pressed: by pointer, by finger, by key. */
export type Press = (button: Locator) => Promise<void>;

export const byPointer: Press = (button) => button.click();
export const byFinger: Press = (button) => button.tap();
export const byKey: Press = (button) => button.press("Enter");
