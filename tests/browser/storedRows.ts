import type { Page } from "@playwright/test";

/** Runs in the page: all rows of a table of its logbook. */
async function rowsOf(table: string): Promise<Record<string, unknown>[]> {
  const opening = indexedDB.open("gatefall-logbook");
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  try {
    if (![...database.objectStoreNames].includes(table)) return [];
    const reading = database.transaction(table).objectStore(table).getAll();
    return await new Promise((done) => {
      reading.onsuccess = () => done(reading.result);
    });
  } finally {
    database.close();
  }
}

/** All rows of a table of the page's logbook, asked beside the app. */
export const storedRows = (page: Page, table: string): Promise<Record<string, unknown>[]> =>
  page.evaluate(rowsOf, table);
