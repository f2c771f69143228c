import type { KeyboardEvent } from "react";

/** A key pressed by itself, in lower case; null with a modifier, or while it repeats. */
export function plainKey(event: KeyboardEvent): string | null {
  const isPlain = !(event.ctrlKey || event.metaKey || event.altKey || event.repeat);
  return isPlain ? event.key.toLowerCase() : null;
}
