import type { Word } from "./word";

/** What a word means, beside its drawing where it has one. */
export function WordEntry({ text, picture }: Word) {
  return (
    <div className="flex justify-between gap-4">
      <p>{text}</p>
      {picture}
    </div>
  );
}
