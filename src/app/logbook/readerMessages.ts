import type { LogbookContents } from "../../logbook/logbookContents";
import { type ReadingProgress, readLogbookFile } from "../../logbook/logbookFile";
import { messageOf } from "../shell/messageOf";

/** What the reader beside the page tells of a file: any number of times how far it is, then one end. */
export type ReaderMessage =
  | { readonly kind: "progress"; readonly progress: ReadingProgress }
  | { readonly kind: "read"; readonly contents: LogbookContents }
  | { readonly kind: "bad"; readonly sentence: string };

const UNREADABLE = "This file cannot be read: it was moved, changed or locked since you chose it, so choose it again.";

async function textOf(file: Blob): Promise<string | null> {
  try {
    return await file.text();
  } catch {
    // The browser's own words are of no use to a person.
    return null;
  }
}

/**
 * Reads a file and tells of it. Never throws.
 *
 * @param tell - hears how far it is, and the end last
 */
export async function readAndTell(file: Blob, tell: (message: ReaderMessage) => void): Promise<void> {
  const text = await textOf(file);
  if (text === null) return tell({ kind: "bad", sentence: UNREADABLE });
  try {
    tell({ kind: "read", contents: readLogbookFile(text, (progress) => tell({ kind: "progress", progress })) });
  } catch (error) {
    tell({ kind: "bad", sentence: messageOf(error) });
  }
}
