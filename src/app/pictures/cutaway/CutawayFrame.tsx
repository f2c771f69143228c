import type { ReactNode } from "react";
import { WordsHere } from "../../words/WordsHere";

interface CutawayFrameProps {
  /** Links to the words that this kind of lock needs. */
  readonly words: ReactNode;
  readonly children: ReactNode;
}

/** The frame that the inside of every kind of lock is shown in. */
export function CutawayFrame({ words, children }: CutawayFrameProps) {
  return (
    <section className="cutaway" aria-label="Cutaway">
      <div className="spread">
        <h2>
          Cutaway <small>what your turning moves inside the lock</small>
        </h2>
        <WordsHere>{words}</WordsHere>
      </div>
      {children}
    </section>
  );
}
