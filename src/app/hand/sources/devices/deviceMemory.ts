import { storedText, storeText } from "../../../parts/storage/pageStore";

/** What the page's own storage had no room for, or refused: it lasts as long as the page. */
const ofThisPage = new Map<string, string | null>();

/** What was chosen or learned of a device, as it was remembered last; null where there is nothing. */
export const recallText = (key: string): string | null =>
  ofThisPage.has(key) ? (ofThisPage.get(key) ?? null) : storedText(key);

/** Remembers what was chosen or learned of a device, for this page where the browser stores nothing; null forgets it. */
export function rememberText(key: string, text: string | null): void {
  if (storeText(key, text)) ofThisPage.delete(key);
  else ofThisPage.set(key, text);
}
