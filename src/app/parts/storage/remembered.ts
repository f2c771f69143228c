import { useCallback, useSyncExternalStore } from "react";
import { onRemembered, recalled, remember } from "./recall";

/**
 * A choice among words that is remembered for the next visit. Whoever asks for the same key has the same choice.
 *
 * @param choices - the first is the default
 */
export function useRemembered<Choice extends string>(key: string, choices: readonly [Choice, ...Choice[]]) {
  const value = useSyncExternalStore(
    onRemembered,
    () => recalled(key, choices),
    () => choices[0],
  );
  const choose = useCallback((choice: Choice) => remember(key, choice), [key]);
  return [value, choose] as const;
}
