import { storedText, storeText } from "./pageStore";

/** Settings kept in this browser. Where it keeps nothing (private mode), they last as long as the page. */
const PREFIX = "gatefall.";

const ofThisVisit = new Map<string, string>();
const listeners = new Set<() => void>();

/** Hears of every setting that is kept. @returns stops hearing */
export function onRemembered(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

const recall = (key: string) => ofThisVisit.get(key) ?? storedText(PREFIX + key);

/** Keeps a setting for the next visit. */
export function remember(key: string, value: string): void {
  if (!storeText(PREFIX + key, value)) ofThisVisit.set(key, value);
  for (const listener of listeners) listener();
}

/** The choice that was made, on this visit or one before. @param choices - the first is the default */
export function recalled<Choice extends string>(key: string, choices: readonly [Choice, ...Choice[]]): Choice {
  const kept = recall(key);
  return choices.find((choice) => choice === kept) ?? choices[0];
}
