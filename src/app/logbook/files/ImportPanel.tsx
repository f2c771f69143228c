import { useEffect, useRef, useState } from "react";
import { fileSentences } from "../../../records/fileWords";
import { mergeIntoLogbook } from "../../../store/wholeLogbook";
import type { CurrentLogbook } from "../../keeping/currentLogbook";
import { mergedWords } from "../../keeping/mergedWords";
import { LogbookReader } from "../../keeping/reader/logbookReader";
import { ReadingLine } from "../../keeping/reader/ReadingLine";
import type { ReadingState } from "../../keeping/reader/readingWords";
import { FileButton } from "../../parts/files/FileButton";
import { Lines } from "../../parts/Lines";
import { ToldLine, useDoing } from "../../parts/Told";

/** Takes a logbook file in; a large one is read beside the page. */
function useImport(current: CurrentLogbook, say: (text: string) => void) {
  const [remarks, setRemarks] = useState<readonly string[]>([]);
  const reader = useRef(new LogbookReader());
  const [reading, setReading] = useState<ReadingState | null>(null);
  useEffect(() => {
    const { current: own } = reader;
    return () => own.stop();
  }, []);
  const [isBusy, setBusy] = useState(false);
  const read = async (file: File): Promise<string> => {
    setBusy(true);
    const at = { name: file.name, place: 1, files: 1, progress: null };
    setReading(at);
    setRemarks([]);
    try {
      const contents = await reader.current.read(file, (progress) => setReading({ ...at, progress }));
      if (contents === null) return `${file.name}: stopped, and nothing was imported.`;
      setReading(null);
      say(`Storing the records of ${file.name}; a large logbook takes a while.`);
      const merged = await mergeIntoLogbook(current.logbook, contents);
      await current.settle();
      setRemarks(fileSentences(contents.remarks));
      return `${file.name}: ${mergedWords(merged)}`;
    } finally {
      reader.current.close();
      setReading(null);
      setBusy(false);
    }
  };
  return { reading, remarks, isBusy, read, stop: () => reader.current.stop() };
}

/** A logbook from a file, joined with the one that is here. */
export function ImportPanel({ current }: { readonly current: CurrentLogbook }) {
  const { told, act, say } = useDoing();
  const { reading, remarks, isBusy, read, stop } = useImport(current, say);
  return (
    <section className="card" aria-labelledby="files-in">
      <h2 id="files-in">Import</h2>
      <p>
        Adds the records of a logbook file to the ones here. A record that is here already stays, unless the file has a
        later version of it.
      </p>
      <FileButton accept=".json,application/json" isDisabled={isBusy} onFile={(file) => act(() => read(file))}>
        Choose a logbook file
      </FileButton>
      <ReadingLine reading={reading} onStop={stop} />
      <ToldLine told={told} />
      {remarks.length > 0 && (
        <section aria-label="What was wrong in the file">
          <p role="status">
            These things in the file were repaired, left out, or taken as recorded though something about them is wrong.
            Everything else was imported.
          </p>
          <Lines of={remarks} className="max-h-[240px] mt-3 overflow-auto text-small wrap-anywhere" />
        </section>
      )}
    </section>
  );
}
