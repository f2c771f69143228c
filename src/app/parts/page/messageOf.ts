import { errorText } from "../../../wording/problem";
import { areFilesGone, FILES_GONE_WORDS } from "./filesGone";

/** An error in words. */
export function messageOf(error: unknown): string {
  if (areFilesGone(error)) return FILES_GONE_WORDS;
  return errorText(error);
}
