import { LogbookError } from "../records/logbookError";
import { errorsOf, type Words } from "../wording/problem";

/** A sentence for each way that a logbook fails: for those of a browser's storage, by their codes, screens know a remedy. */
const STORAGE_WORDS = {
  unavailable:
    ": This browser does not let the page store anything, perhaps because the window is private. New records stay in this tab: save them as a file under Logbook, Files before you close it.",
  blocked:
    ": Another tab still uses an earlier version of Gatefall. Close that tab; until then new records wait in this one.",
  "newer-version":
    ": A newer version of Gatefall has taken over the records. Reload this page to get that version; the records here have not changed.",
  "quota-full":
    ": The browser has no room left for records. Make room, then try again; or save the logbook as a file under Logbook, Files.",
  "storage-failed":
    ": The browser could not write the record. Try again; if that fails too, save the logbook as a file under Logbook, Files.",
  "no-answer":
    ": The browser’s database does not answer. New records wait in this tab and are saved as soon as it does. If this message stays, close other Gatefall tabs or restart the browser.",
  emptied: ": The browser’s database was deleted while this page was open. Try again to make it anew.",
  "record-gone": ": This record is not here any more: it was deleted or given away meanwhile.",
  "person-gone": ": This person is not here any more: choose another one.",
  "person-of-class": ": This person joined a class. Merge the other person into this one instead.",
  "export-not-offered": ": Offer to export these records first: deleting cannot be undone.",
} as const satisfies Words;

/** A logbook of a browser that cannot do what it was asked. */
class StorageError extends LogbookError {
  protected override readonly words = STORAGE_WORDS;
}

/** Makes the errors of a logbook. */
export const storageError = errorsOf(STORAGE_WORDS, StorageError);

/** The codes of problems with a logbook. */
export type StorageProblemCode = keyof typeof STORAGE_WORDS;

const CODES: Readonly<Record<string, StorageProblemCode>> = {
  MissingAPIError: "unavailable",
  InvalidStateError: "unavailable",
  SecurityError: "unavailable",
  UnknownError: "unavailable",
  OpenFailedError: "unavailable",
  VersionError: "newer-version",
  QuotaExceededError: "quota-full",
};

/** Errors that storage wraps others in: name and inner error, as Dexie and the browser give them. */
interface Wrapping {
  readonly name?: unknown;
  readonly inner?: unknown;
  readonly failures?: unknown;
}

const DEPTH = 4;

/** Names of an error and of those it wraps, outermost first. */
function namesOf(error: unknown, depth = DEPTH): string[] {
  if (typeof error !== "object" || error === null || depth === 0) return [];
  const { name, inner, failures } = error as Wrapping;
  const wrapped: unknown[] = Array.isArray(failures) ? [inner, failures[0]] : [inner];
  return [...(typeof name === "string" ? [name] : []), ...wrapped.flatMap((one) => namesOf(one, depth - 1))];
}

/**
 * What an error of the browser's database means.
 *
 * @param error - as Dexie or the browser threw it; a `LogbookError` is given back as it is
 * @param isOpening - whether it came while the database was opened
 */
export function problemOf(error: unknown, isOpening = false): LogbookError {
  if (error instanceof LogbookError) return error;
  const names = namesOf(error);
  // The innermost name is the reason: a full disk comes as an aborted transaction, or as a failed opening.
  const code = names.flatMap((name) => CODES[name] ?? []).at(-1);
  const isStillUseful = isOpening || code === "quota-full" || code === "newer-version";
  return storageError(isStillUseful ? (code ?? "unavailable") : "storage-failed", []);
}
