import { Button } from "../../parts/controls/Button";
import { type ReadingState, readingWords, readShare } from "./readingWords";

interface ReadingLineProps {
  /** Null while nothing is read. */
  readonly reading: ReadingState | null;
  readonly onStop: () => void;
}

/** How far the reading of files is, with the way to stop it. */
export function ReadingLine({ reading, onStop }: ReadingLineProps) {
  const share = reading === null ? null : readShare(reading);
  return (
    <div className="reading-line row gap-x-4">
      <p role="status" className="basis-full">
        {reading !== null && readingWords(reading)}
      </p>
      {reading !== null && (
        <>
          <progress
            className="flex-1 max-w-[320px]"
            aria-label="Read so far"
            {...(share !== null && { value: share })}
          />
          <Button onClick={onStop}>Stop reading</Button>
        </>
      )}
    </div>
  );
}
