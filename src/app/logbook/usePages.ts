import { useState } from "react";
import {
  type AttemptFilter,
  type AttemptPage,
  attemptPage,
  countAttempts,
  type PageEnd,
} from "../../logbook/attemptQueries";
import type { CurrentLogbook } from "./currentLogbook";
import { useAsked } from "./useLogbook";

/** Attempts on a page. */
const PAGE_SIZE = 20;

interface CountedPage extends AttemptPage {
  readonly count: number;
}

/** Pages of attempts, latest first; a change of the filter goes back to the first. */
export function usePages(current: CurrentLogbook, filter: AttemptFilter) {
  const name = JSON.stringify(filter);
  const [turned, setTurned] = useState<{ name: string; ends: readonly PageEnd[] }>({ name, ends: [] });
  const ends = turned.name === name ? turned.ends : [];
  const before = ends.at(-1);
  const { answer, problem } = useAsked(
    `page ${current.version} ${name} ${before?.id}`,
    async (): Promise<CountedPage> => ({
      ...(await attemptPage(current.logbook, filter, PAGE_SIZE, before)),
      count: await countAttempts(current.logbook, filter),
    }),
  );
  const next = answer?.next ?? null;
  const first = ends.length * PAGE_SIZE;
  return {
    attempts: answer?.attempts ?? null,
    count: answer?.count ?? 0,
    problem,
    /** Places of the first and last attempt on the page, counted from 1. */
    from: first + 1,
    to: first + (answer?.attempts.length ?? 0),
    later: ends.length === 0 ? null : () => setTurned({ name, ends: ends.slice(0, -1) }),
    earlier: next === null ? null : () => setTurned({ name, ends: [...ends, next] }),
  };
}
