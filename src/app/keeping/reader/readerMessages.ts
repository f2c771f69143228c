import { type ReadingProgress, readLogbookFile } from "../../../records/file/logbookFile";
import { type ReplayedLogbook, replayedLogbook } from "../../../records/file/replayedAttempts";
import { FileError, fileProblem } from "../../../records/fileWords";
import type { LogbookContents } from "../../../records/logbookContents";
import type { Problem } from "../../../wording/problem";
import { messageOf } from "../../parts/page/messageOf";

type Attempts = LogbookContents["records"]["attempts"];

/** Attempts that come to the page at once. */
const AT_ONCE = 500;

/** Largest file that is read, bytes: some 200,000 attempts with their motions. */
const MOST_BYTES = 512e6;

/** What the reader beside the page tells of a file: any number of times how far it is, then one end. */
export type ReaderMessage =
  | { readonly kind: "progress"; readonly progress: ReadingProgress }
  /** Some of the attempts with their motions: all at once would hold up the page. */
  | { readonly kind: "attempts"; readonly attempts: Attempts; readonly traces: LogbookContents["traces"] }
  /** Everything else, after the attempts, and what was repaired or left out. */
  | { readonly kind: "read"; readonly contents: LogbookContents; readonly leftOut: readonly Problem[] }
  | { readonly kind: "bad"; readonly problem: Problem };

/** What is asked of the reader: a file as it is, or with every attempt replayed. */
export type ReaderOrder = Blob | { readonly replayed: Blob };

async function textOf(file: Blob): Promise<string | null> {
  try {
    return await file.text();
  } catch {
    // The browser's own words are of no use to a person.
    return null;
  }
}

function tellInParts({ contents, leftOut }: ReplayedLogbook, tell: (message: ReaderMessage) => void): void {
  const { attempts } = contents.records;
  for (let at = 0; at < attempts.length; at += AT_ONCE) {
    const part = attempts.slice(at, at + AT_ONCE);
    const traces = part.flatMap(({ id }): (readonly [string, Uint8Array])[] => {
      const bytes = contents.traces.get(id);
      return bytes === undefined ? [] : [[id, bytes]];
    });
    tell({ kind: "attempts", attempts: part, traces: new Map(traces) });
  }
  tell({ kind: "read", contents: { records: { ...contents.records, attempts: [] }, traces: new Map() }, leftOut });
}

/**
 * Reads a file and tells of it. Never throws.
 *
 * @param tell - hears how far it is, and the end last
 */
export async function readAndTell(order: ReaderOrder, tell: (message: ReaderMessage) => void): Promise<void> {
  const isReplayed = "replayed" in order;
  const file = isReplayed ? order.replayed : order;
  if (file.size > MOST_BYTES) return tell({ kind: "bad", problem: fileProblem("too-large", []) });
  const text = await textOf(file);
  if (text === null) return tell({ kind: "bad", problem: fileProblem("file-moved", []) });
  const hear = (progress: ReadingProgress) => tell({ kind: "progress", progress });
  try {
    const { remarks, ...contents } = readLogbookFile(text, hear, isReplayed);
    const read = isReplayed ? replayedLogbook(contents, hear) : { contents, leftOut: [] };
    tellInParts({ contents: read.contents, leftOut: [...remarks, ...read.leftOut] }, tell);
  } catch (error) {
    const isOfFile = error instanceof FileError;
    tell({
      kind: "bad",
      problem: isOfFile ? error.problem : fileProblem("reader-failed", [], { why: messageOf(error) }),
    });
  }
}
