import type { ReactNode } from "react";
import "./words.css";

interface WordsHereProps {
  /** Links to words, in the order in which they are met. */
  readonly children: ReactNode;
}

/** The words of a panel that a newcomer may not know: a quiet line beside its heading, never inside it. */
export function WordsHere({ children }: WordsHereProps) {
  return (
    <div className="words-here row gap-y-0 gap-x-4 text-fine leading-[1.4] text-soft print:hidden">
      <span>What is:</span>
      {children}
    </div>
  );
}
