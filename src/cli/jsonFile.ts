import { isNestedDeeply } from "../lock/jsonDepth";
import type { Terminal } from "./command";
import { UsageError } from "./usageError";

/**
 * A JSON file, parsed.
 *
 * @throws {UsageError} when it cannot be read or is not JSON
 */
export async function jsonFile(file: string, terminal: Terminal): Promise<unknown> {
  const text = await terminal.text(file);
  if (isNestedDeeply(text)) throw new UsageError(`${file} is nested more than 100 deep; no file of this kind is`);
  try {
    // Some editors begin a file with a byte order mark, which is no JSON.
    return JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (error) {
    throw new UsageError(`${file} is not JSON: ${error instanceof Error ? error.message : String(error)}`);
  }
}
