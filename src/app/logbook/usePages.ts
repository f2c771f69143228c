import { useState } from "react";
import {
  type AttemptFilter,
  type AttemptPage,
  attemptPage,
  countAttempts,
  type PageEnd,
} from "../../logbook/attemptQueries";
import { runningAmong } from "../../logbook/sittingQueries";
import type { CurrentLogbook } from "./currentLogbook";
import { useAsked } from "./useLogbook";

/** Attempts on a page. */
const PAGE_SIZE = 20;

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

interface CountedPage extends AttemptPage {
  readonly count: number;
  /** Sittings of this page's attempts that have not ended. */
  readonly running: ReadonlySet<string>;
}

async function countedPage(
  { logbook }: CurrentLogbook,
  filter: AttemptFilter,
  before: PageEnd | undefined,
): Promise<CountedPage> {
  const page = await attemptPage(logbook, filter, PAGE_SIZE, before);
  const sittings = page.attempts.flatMap(({ sittingId }) => sittingId ?? []);
  return {
    ...page,
    count: await countAttempts(logbook, filter),
    running: await runningAmong(logbook, new Set(sittings)),
  };
}

const NONE: ReadonlySet<string> = new Set();

/** Pages of attempts, latest first; a change of the filter goes back to the first. */
export function usePages(current: CurrentLogbook, filter: AttemptFilter) {
  const name = JSON.stringify(filter);
  const { before, first, later, goOn } = usePageEnds(name, PAGE_SIZE);
  const { answer, problem } = useAsked(`page ${current.version} ${name} ${before?.id}`, () =>
    countedPage(current, filter, before),
  );
  const next = answer?.next ?? null;
  return {
    attempts: answer?.attempts ?? null,
    count: answer?.count ?? 0,
    running: answer?.running ?? NONE,
    problem,
    /** Places of the first and last attempt on the page, counted from 1. */
    from: first + 1,
    to: first + (answer?.attempts.length ?? 0),
    later,
    earlier: next === null ? null : () => goOn(next),
  };
}
