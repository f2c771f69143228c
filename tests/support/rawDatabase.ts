import type { DatabaseHost } from "../../src/store/logbookDatabase";

/** A field, several together, or with a star before it a field that is a list, by each of its members. */
type Index = string | readonly string[];

/**
 * A database made by hand, without the code under test, as an earlier or other program left it.
 *
 * @param version - as the browser counts: ten for each of ours
 * @param tables - fields of the indexes of each table; every table is keyed by `id`
 * @returns the open connection
 */
export function rawDatabase(
  { indexedDB }: Pick<DatabaseHost, "indexedDB">,
  name: string,
  version: number,
  tables: Readonly<Record<string, readonly Index[]>>,
  rows: Readonly<Record<string, readonly object[]>> = {},
): Promise<IDBDatabase> {
  // Inside, so that the whole function can be sent to a page.
  function makeTable(store: IDBObjectStore, indexes: readonly Index[], records: readonly object[]): void {
    for (const index of indexes) {
      // Dexie names a compound index by its fields: "[personId+startedAt]".
      const [name, path] =
        typeof index === "string"
          ? [index.replace("*", ""), index.replace("*", "")]
          : [`[${index.join("+")}]`, [...index]];
      store.createIndex(name, path, { multiEntry: index[0] === "*" });
    }
    for (const record of records) store.put(record);
  }
  return new Promise((resolve, reject) => {
    const request = indexedDB.open(name, version);
    request.onerror = () => reject(request.error);
    request.onsuccess = () => resolve(request.result);
    request.onupgradeneeded = () => {
      for (const [table, indexes] of Object.entries(tables)) {
        makeTable(request.result.createObjectStore(table, { keyPath: "id" }), indexes, rows[table] ?? []);
      }
    };
  });
}
