import { WordEntry } from "./WordEntry";
import { wordOf } from "./wordTable";

/** The meaning of one word, for a dialog. */
export function WordMeaning({ word }: { readonly word: string }) {
  const found = wordOf(word);
  if (found === undefined) return <p>This word is not explained yet.</p>;
  return (
    <section>
      <h3 className="mb-3 text-title">{found.term}</h3>
      <WordEntry {...found} />
      <p>
        <a href={`#/words?word=${word}`} target="_blank" rel="noopener">
          All words, in a new tab
        </a>
      </p>
    </section>
  );
}
