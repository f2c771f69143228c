import { useEffect, useRef, useState } from "react";
import { mergeIntoLogbook } from "../../logbook/wholeLogbook";
import { FileButton } from "../shell/FileButton";
import type { CurrentLogbook } from "./currentLogbook";
import { LogbookReader } from "./logbookReader";
import { mergedWords } from "./mergedWords";
import { ReadingLine } from "./ReadingLine";
import type { ReadingState } from "./readingWords";
import { ToldLine, useDoing } from "./Told";

/** Takes a logbook file in; a large one is read beside the page. */
function useImport(current: CurrentLogbook, say: (text: string) => void) {
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
    try {
      const contents = await reader.current.read(file, (progress) => setReading({ ...at, progress }));
      if (contents === null) return `${file.name}: stopped, and nothing was imported.`;
      setReading(null);
      say(`Storing the records of ${file.name}; a large logbook takes a while.`);
      const merged = await mergeIntoLogbook(current.logbook, contents);
      await current.settle();
      return `${file.name}: ${mergedWords(merged)}`;
    } finally {
      reader.current.close();
      setReading(null);
      setBusy(false);
    }
  };
  return { reading, isBusy, read, stop: () => reader.current.stop() };
}

/** A logbook from a file, joined with the one that is here. */
export function ImportPanel({ current }: { readonly current: CurrentLogbook }) {
  const { told, act, say } = useDoing();
  const { reading, isBusy, read, stop } = useImport(current, say);
  return (
    <section className="figure" aria-labelledby="files-in">
      <h2 id="files-in">Import</h2>
      <p>
        A whole logbook from here or another device joins this one. Each record comes once, and none takes the place of
        a later one.
      </p>
      <FileButton accept=".json,application/json" isDisabled={isBusy} onFile={(file) => act(() => read(file))}>
        Choose a logbook file
      </FileButton>
      <ReadingLine reading={reading} onStop={stop} />
      <ToldLine told={told} />
    </section>
  );
}
