/** Runs in the page: the rows that a table of its database holds. */
export async function databaseRows(table: string): Promise<unknown[]> {
  const opening = indexedDB.open("gatefall-logbook");
  const database = await new Promise<IDBDatabase>((done) => {
    opening.onsuccess = () => done(opening.result);
  });
  const reading = database.transaction(table).objectStore(table).getAll();
  const rows = await new Promise<unknown[]>((done) => {
    reading.onsuccess = () => done(reading.result);
  });
  database.close();
  return rows;
}
