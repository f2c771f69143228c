import type { Word } from "./word";

/** What a word means, beside its drawing where it has one, and where one does it. */
export function WordEntry({ text, picture, place }: Word) {
  return (
    <div className="flex justify-between gap-4">
      <p>
        {text}
        {place !== undefined && (
          <>
            {" "}
            <a href={place.href}>{place.title}</a>.
          </>
        )}
      </p>
      {picture}
    </div>
  );
}
