/** A text as the browser's database has it; null where it was taken away. */
export interface TextRow {
  readonly key: string;
  readonly text: string | null;
  /** How often the text under this key was stored or taken away. */
  readonly count: number;
}

const NAME = "gatefall-texts";
const TABLE = "texts";

let opened: Promise<IDBDatabase> | null = null;

/** What a request comes to. @throws what it failed with */
const answered = <Answer>(request: IDBRequest<Answer>): Promise<Answer> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

async function open(): Promise<IDBDatabase> {
  const opening = indexedDB.open(NAME, 1);
  opening.onupgradeneeded = () => opening.result.createObjectStore(TABLE, { keyPath: "key" });
  const database = await answered(opening);
  const forget = () => {
    opened = null;
  };
  database.onclose = forget;
  database.onversionchange = () => {
    database.close();
    forget();
  };
  return database;
}

/** The database, opened once; where it could not be opened, the next who asks tries again. */
function texts(): Promise<IDBDatabase> {
  opened ??= open().catch((error: unknown) => {
    opened = null;
    throw error;
  });
  return opened;
}

/** Stores a row so that it outlasts a power cut. @throws where this browser does not store it */
export async function putRow(row: TextRow): Promise<void> {
  const transaction = (await texts()).transaction(TABLE, "readwrite", { durability: "strict" });
  const done = new Promise<void>((resolve, reject) => {
    transaction.oncomplete = () => resolve();
    transaction.onabort = () => reject(transaction.error);
  });
  transaction.objectStore(TABLE).put(row);
  // A page that goes now does not take it back.
  transaction.commit();
  return done;
}

const isRow = (row: Partial<TextRow>): row is TextRow =>
  typeof row.key === "string" && (row.text === null || typeof row.text === "string") && Number.isSafeInteger(row.count);

/** All rows. @throws where this browser does not give them */
export async function textRows(): Promise<readonly TextRow[]> {
  const table = (await texts()).transaction(TABLE).objectStore(TABLE);
  return (await answered<Partial<TextRow>[]>(table.getAll())).filter(isRow);
}
