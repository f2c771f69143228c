import { type MouseEvent, type ReactNode, useState } from "react";
import { Dialog } from "../parts/controls/Dialog";
import { FilesGoneLine } from "../parts/page/FilesGoneLine";
import { fetchedLater } from "../parts/page/fetchedLater";
import "./words.css";

const WordMeaning = fetchedLater(async () => (await import("./WordMeaning")).WordMeaning, null, FilesGoneLine);

interface WordLinkProps {
  /** Id of the word, as the page of words has it. */
  readonly word: string;
  readonly children: ReactNode;
}

/** A word that explains itself where it is, so that nothing under way is left. It is a link to the page of words too. */
export function WordLink({ word, children }: WordLinkProps) {
  const [isOpen, setOpen] = useState(false);
  const open = (event: MouseEvent) => {
    // Whoever asks for a tab of its own gets the page.
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    setOpen(true);
  };
  return (
    <>
      <a
        className="word-link underline decoration-line decoration-dotted hover:decoration-accent"
        href={`#/words?word=${word}`}
        aria-haspopup="dialog"
        onClick={open}
      >
        {children}
      </a>
      <Dialog title="What it means" isOpen={isOpen} onClose={() => setOpen(false)}>
        <WordMeaning word={word} />
      </Dialog>
    </>
  );
}
