import { useState } from "react";
import type { PageEnd } from "../../../store/attemptQueries";

/**
 * Where in a list that comes in pages one is.
 *
 * @param name - of what is listed; another name goes back to the first page
 */
export function usePageEnds(name: string, size: number) {
  const [turned, setTurned] = useState<{ name: string; ends: readonly PageEnd[] }>({ name, ends: [] });
  const ends = turned.name === name ? turned.ends : [];
  return {
    /** Where the page before ended, if there is one. */
    before: ends.at(-1),
    /** Records on the pages before. */
    first: ends.length * size,
    later: ends.length === 0 ? null : () => setTurned({ name, ends: ends.slice(0, -1) }),
    goOn: (next: PageEnd) => setTurned({ name, ends: [...ends, next] }),
  };
}
