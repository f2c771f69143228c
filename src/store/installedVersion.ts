import type { DatabaseHost } from "./logbookDatabase";

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
