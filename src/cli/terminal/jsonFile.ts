import { isNestedDeeply } from "../../lock/jsonDepth";
import { errorText } from "../../wording/problem";
import type { Terminal } from "./command";
import { usageError } from "./usageError";

/**
 * A JSON file, parsed.
 *
 * @throws {UsageError} when it cannot be read, is not JSON, or is nested too deep for any of our files
 */
export async function jsonFile(file: string, terminal: Terminal): Promise<unknown> {
  const text = await terminal.text(file);
  if (isNestedDeeply(text)) throw usageError("file-deep", [file]);
  try {
    // Some editors begin a file with a byte order mark, which is no JSON.
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw usageError("file-not-json", [file], { why: errorText(error) });
  }
}
