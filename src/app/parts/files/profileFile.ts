import type { Profile } from "../../../lock/profile";
import { parseProfile } from "../../../lock/profileSchema";
import { ProblemError } from "../../../wording/problem";
import { messageOf } from "../page/messageOf";

/** Largest file that is read, bytes: a profile is a thousandth of it. */
const MOST_BYTES = 2_000_000;

/** Reads a lock profile of the user's own; a bad one is told in a sentence. */
export async function profileFromFile(file: File): Promise<Profile | string> {
  if (file.size > MOST_BYTES) return `${file.name} is not loaded: it is far larger than a lock profile.`;
  try {
    return parseProfile(JSON.parse(await file.text()));
  } catch (error) {
    if (error instanceof SyntaxError) return `${file.name} is not loaded: it is not JSON.`;
    const why = error instanceof ProblemError ? error.says : messageOf(error);
    return `${file.name} is not loaded: ${why}.`;
  }
}
