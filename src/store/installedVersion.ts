import { DATABASE_VERSION, type DatabaseHost, type LogbookDatabase } from "./logbookDatabase";
import { storageError } from "./storageProblem";

/** Dexie counts in units, the browser in tenths. */
const BROWSER_VERSIONS = 10;

/**
 * Version of a database as the browser counts it, found without changing or making anything.
 *
 * Dexie must not be asked: it opens a newer database, misses what it knows, and raises its version to add that.
 *
 * @returns 0 where there is no such database
 * @throws {DOMException} when the browser keeps nothing here
 */
export function installedVersion({ indexedDB }: Pick<DatabaseHost, "indexedDB">, name: string): Promise<number> {
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name);
    request.onupgradeneeded = () => {
      // It would be made now: do not.
      request.transaction?.abort();
    };
    request.onsuccess = () => {
      const { version } = request.result;
      request.result.close();
      resolve(version);
    };
    request.onerror = (event) => {
      event.preventDefault();
      const { error } = request;
      if (error?.name === "AbortError") resolve(0);
      else reject(error);
    };
  });
}

/**
 * Makes sure that this version can open a database.
 *
 * @throws {LogbookError} `unavailable` where the browser keeps none, `newer-version` where a later version wrote it
 */
export async function checkInstalled({ host, name }: LogbookDatabase): Promise<void> {
  if (host === undefined) throw storageError("unavailable", []);
  const version = (await installedVersion(host, name)) / BROWSER_VERSIONS;
  if (version > DATABASE_VERSION) throw storageError("newer-version", []);
}
