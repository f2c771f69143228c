import type { ReactNode } from "react";
import { WordsHere } from "../../words/WordsHere";

interface CutawayFrameProps {
  /** Links to the words that this kind of lock needs. */
  readonly words: ReactNode;
  /** How much room a label has beside its neighbors. */
  readonly columns?: "wide" | "narrow" | "narrowest";
  /** What the picture shows, for a screen reader; no two alike. */
  readonly sentences: readonly string[];
  readonly children: ReactNode;
}

/** The frame that the inside of every kind of lock is shown in. */
export function CutawayFrame({ words, columns, sentences, children }: CutawayFrameProps) {
  return (
    <section className="cutaway" aria-label="Cutaway">
      <div className="spread">
        <h2>
          Cutaway <small>what your turning moves inside the lock</small>
        </h2>
        <WordsHere>{words}</WordsHere>
      </div>
      <div className="cutaway-picture max-w-[640px]" data-columns={columns}>
        {children}
      </div>
      <ul className="visually-hidden">
        {sentences.map((sentence, k) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a part is known by its place; its words change with every move
          <li key={k}>{sentence}</li>
        ))}
      </ul>
    </section>
  );
}
