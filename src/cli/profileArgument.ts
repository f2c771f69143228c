import type { Profile } from "../lock/profile";
import { parseProfile } from "../lock/profileSchema";
import { shippedProfile } from "../lock/shippedProfiles";
import type { Terminal } from "./terminal/command";
import { jsonFile } from "./terminal/jsonFile";
import { usageError } from "./terminal/usageError";

/**
 * Reads a profile file.
 *
 * @throws {UsageError} when the file cannot be read
 * @throws {LockError} when it is no profile
 */
export async function readProfileFile(file: string, terminal: Terminal): Promise<Profile> {
  return parseProfile(await jsonFile(file, terminal));
}

/** A profile named on the command line: a shipped one by its id, or a file of one's own (a name ending in .json). */
export async function profileArgument(name: string | boolean | undefined, terminal: Terminal): Promise<Profile> {
  if (typeof name !== "string") throw usageError("profile-needed", []);
  return name.endsWith(".json") ? readProfileFile(name, terminal) : shippedProfile(name);
}
