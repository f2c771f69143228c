import { isNestedDeeply } from "../lock/jsonDepth";
import { errorText } from "../wording/problem";
import type { Terminal } from "./command";
import { usageError } from "./usageError";

/**
 * The text of a JSON file, parsed.
 *
 * @param file - its name, for the error
 * @throws {UsageError} when it is not JSON, or nested too deep for any of our files
 */
export function parsedFile(text: string, file: string): unknown {
  if (isNestedDeeply(text)) throw usageError("file-deep", [file]);
  try {
    // Some editors begin a file with a byte order mark, which is no JSON.
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw usageError("file-not-json", [file], { why: errorText(error) });
  }
}

/**
 * A JSON file, parsed.
 *
 * @throws {UsageError} when it cannot be read or is not JSON
 */
export const jsonFile = async (file: string, terminal: Terminal): Promise<unknown> =>
  parsedFile(await terminal.text(file), file);
