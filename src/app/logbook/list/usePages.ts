import { useState } from "react";
import type { PageEnd } from "../../../store/attemptQueries";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { useAsked } from "../../keeping/useLogbook";

/**
 * One page of a list that comes in pages, asked for again whenever the logbook changes.
 *
 * @param name - of what is listed; another name goes back to the first page
 * @param size - records on a page
 * @param ask - gives the page after the end of another, or the first; with its own end, null where it is the last
 */
export function usePages<Page extends { readonly next: PageEnd | null }>(
  { version }: CurrentLogbook,
  name: string,
  size: number,
  ask: (before: PageEnd | undefined) => Promise<Page>,
) {
  const [turned, setTurned] = useState<{ name: string; ends: readonly PageEnd[] }>({ name, ends: [] });
  const ends = turned.name === name ? turned.ends : [];
  const before = ends.at(-1);
  const { answer, problem } = useAsked(`${name} ${version} ${before?.id}`, () => ask(before));
  const next = answer?.next ?? null;
  return {
    answer,
    problem,
    /** Records on the pages before. */
    first: ends.length * size,
    later: ends.length === 0 ? null : () => setTurned({ name, ends: ends.slice(0, -1) }),
    earlier: next === null ? null : () => setTurned({ name, ends: [...ends, next] }),
  };
}
