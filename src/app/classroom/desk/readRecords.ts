import type { LogbookContents } from "../../../records/logbookContents";
import { NO_CONTENTS } from "../../../records/logbookContents";
import { LogbookReader } from "../../keeping/reader/logbookReader";
import type { Asking } from "../asking/asking";

/**
 * The records of a person or a class, as the server hands them out, read beside the page.
 *
 * @param path - "/people/ID" or "/classes/ID"
 * @throws {SchoolError} as asking does
 * @throws {FileError} where what comes is no logbook
 */
export async function readRecords(asking: Asking, path: string): Promise<LogbookContents> {
  const file = await asking.file(`${path}/export/logbook`);
  const reader = new LogbookReader();
  try {
    return (await reader.read(file, () => undefined)) ?? NO_CONTENTS;
  } finally {
    reader.close();
  }
}
