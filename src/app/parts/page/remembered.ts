import { useCallback, useSyncExternalStore } from "react";

/** Settings kept in this browser. Where it keeps nothing (private mode), they last as long as the page. */
const PREFIX = "gatefall.";

const ofThisVisit = new Map<string, string>();
const listeners = new Set<() => void>();

function subscribe(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}

function recall(key: string): string | null {
  try {
    return ofThisVisit.get(key) ?? localStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

function remember(key: string, value: string): void {
  try {
    localStorage.setItem(PREFIX + key, value);
  } catch {
    // Nothing is lost: the setting still holds for this visit.
    ofThisVisit.set(key, value);
  }
  for (const listener of listeners) listener();
}

/**
 * A choice among words that is remembered for the next visit. Whoever asks for the same key has the same choice.
 *
 * @param choices - the first is the default
 */
export function useRemembered<Choice extends string>(key: string, choices: readonly [Choice, ...Choice[]]) {
  const kept = useSyncExternalStore(subscribe, () => recall(key));
  const value = choices.find((choice) => choice === kept) ?? choices[0];
  const choose = useCallback((choice: Choice) => remember(key, choice), [key]);
  return [value, choose] as const;
}
