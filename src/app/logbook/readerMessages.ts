import type { LogbookContents } from "../../logbook/logbookContents";
import { type ReadingProgress, readLogbookFile } from "../../logbook/logbookFile";
import { replayedLogbook } from "../../logbook/replayedAttempts";
import { messageOf } from "../shell/messageOf";

/** What the reader beside the page tells of a file: any number of times how far it is, then one end. */
export type ReaderMessage =
  | { readonly kind: "progress"; readonly progress: ReadingProgress }
  /** What was left out of a logbook that was replayed, a sentence each. */
  | { readonly kind: "read"; readonly contents: LogbookContents; readonly leftOut: readonly string[] }
  | { readonly kind: "bad"; readonly sentence: string };

/** What is asked of the reader: a file as it is, or with every attempt replayed. */
export type ReaderOrder = Blob | { readonly replayed: Blob };

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
export async function readAndTell(order: ReaderOrder, tell: (message: ReaderMessage) => void): Promise<void> {
  const isReplayed = "replayed" in order;
  const text = await textOf(isReplayed ? order.replayed : order);
  if (text === null) return tell({ kind: "bad", sentence: UNREADABLE });
  const hear = (progress: ReadingProgress) => tell({ kind: "progress", progress });
  try {
    const contents = readLogbookFile(text, hear);
    tell({ kind: "read", ...(isReplayed ? replayedLogbook(contents, hear) : { contents, leftOut: [] }) });
  } catch (error) {
    tell({ kind: "bad", sentence: messageOf(error) });
  }
}
