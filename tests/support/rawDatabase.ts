import type { DatabaseHost } from "../../src/logbook/logbookDatabase";

/**
 * A database made by hand, without the code under test, as an earlier or other program left it.
 *
 * @param version - as the browser counts: ten for each of ours
 * @param tables - names of the indexes of each table; every table is keyed by `id`
 * @returns the open connection
 */
export function rawDatabase(
  { indexedDB }: DatabaseHost,
  name: string,
  version: number,
  tables: Readonly<Record<string, readonly string[]>>,
  rows: Readonly<Record<string, readonly object[]>> = {},
): Promise<IDBDatabase> {
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

function makeTable(store: IDBObjectStore, indexes: readonly string[], rows: readonly object[]): void {
  for (const index of indexes) store.createIndex(index, index);
  for (const row of rows) store.put(row);
}
