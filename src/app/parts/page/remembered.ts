import { useCallback, useState } from "react";

/** Settings kept in this browser. Where it keeps nothing (private mode), they last as long as the page. */
const PREFIX = "gatefall.";

function recall(key: string): string | null {
  try {
    return localStorage.getItem(PREFIX + key);
  } catch {
    return null;
  }
}

function remember(key: string, value: string): void {
  try {
    localStorage.setItem(PREFIX + key, value);
  } catch {
    // Nothing is lost: the setting still holds for this visit.
  }
}

/**
 * A choice among words that is remembered for the next visit.
 *
 * @param choices - the first is the default
 */
export function useRemembered<Choice extends string>(key: string, choices: readonly [Choice, ...Choice[]]) {
  const [value, setValue] = useState<Choice>(() => choices.find((choice) => choice === recall(key)) ?? choices[0]);
  const choose = useCallback(
    (choice: Choice) => {
      setValue(choice);
      remember(key, choice);
    },
    [key],
  );
  return [value, choose] as const;
}
