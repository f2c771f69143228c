import { useState } from "react";

/** What the bench has to say, until it is closed. */
export interface Messages {
  readonly texts: readonly string[];
  readonly close: (text: string) => void;
  /** Takes the place of the last word about a lock file; null takes it away. */
  readonly setFileProblem: (problem: string | null) => void;
}

/** @param fromAddress - what is wrong with the page's address; keeps its identity as long as the address is the same */
export function useMessages(fromAddress: readonly string[]): Messages {
  const [closedFrom, setClosedFrom] = useState<{ of: readonly string[]; texts: readonly string[] }>(NONE_CLOSED);
  const [fileProblem, setFileProblem] = useState<string | null>(null);
  const closed = closedFrom.of === fromAddress ? closedFrom.texts : [];
  const open = fromAddress.filter((text) => !closed.includes(text));
  return {
    texts: fileProblem === null ? open : [...open, fileProblem],
    close: (text) => {
      if (text === fileProblem) setFileProblem(null);
      else setClosedFrom({ of: fromAddress, texts: [...closed, text] });
    },
    setFileProblem,
  };
}

const NONE_CLOSED = { of: [], texts: [] };
