import { createHash } from "node:crypto";
import { createWriteStream } from "node:fs";
import { open, rename, rm } from "node:fs/promises";
import { Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import { createGzip } from "node:zlib";
import { type Kysely, sql, type Transaction } from "kysely";
import { errorText } from "../../wording/problem";
import type { Tables } from "../database/tables/tables";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";
import { migrationsOf, type TableShape, tablesInOrder } from "./tablesInOrder";

/** Rows that are read at once. */
const PAGE = 500;

/** How many rows of each table a backup has. */
export type RowCounts = Readonly<Record<string, number>>;

function* valuesOf(row: Readonly<Record<string, unknown>>, { columns, bytes }: TableShape) {
  for (const column of columns) {
    const value = row[column];
    yield bytes.includes(column) && value instanceof Uint8Array ? Buffer.from(value).toString("base64") : value;
  }
}

async function* rowsOf(database: Transaction<Tables>, table: TableShape): AsyncIterable<string> {
  const columns = sql.join(table.columns.map((column) => sql.ref(column)));
  await sql`declare backup_rows no scroll cursor for select ${columns} from ${sql.table(table.name)}`.execute(database);
  for (;;) {
    const { rows } = await sql<Record<string, unknown>>`fetch ${sql.lit(PAGE)} from backup_rows`.execute(database);
    for (const row of rows) yield JSON.stringify([...valuesOf(row, table)]);
    if (rows.length < PAGE) break;
  }
  await sql`close backup_rows`.execute(database);
}

/** The lines of a backup; the last holds the counts and the hash of all before. */
async function* linesOf(database: Transaction<Tables>, at: number, counts: Record<string, number>) {
  const hash = createHash("sha256");
  const hashed = (line: string) => {
    hash.update(`${line}\n`);
    return `${line}\n`;
  };
  const tables = await tablesInOrder(database);
  const migrations = await migrationsOf(database);
  yield hashed(JSON.stringify({ format: "gatefall-class-backup", version: 1, at, migrations, tables }));
  for (const table of tables) {
    yield hashed(JSON.stringify({ table: table.name }));
    counts[table.name] = 0;
    for await (const line of rowsOf(database, table)) {
      counts[table.name] = (counts[table.name] ?? 0) + 1;
      yield hashed(line);
    }
  }
  yield `${JSON.stringify({ rows: counts, sha256: hash.digest("hex") })}\n`;
}

async function synced(file: string): Promise<void> {
  const written = await open(file, "r");
  await written.sync();
  await written.close();
}

/**
 * Writes everything that a database holds to a file, as it was at one moment; a server may go on working meanwhile. The
 * private keys are not in it.
 *
 * @param file - it is there whole, or not at all
 * @throws {ServerError} "backup-not-written"
 */
export async function writeBackup(database: Kysely<Tables>, file: string, now: number): Promise<RowCounts> {
  const counts: Record<string, number> = {};
  const part = `${file}.part`;
  try {
    await database
      .transaction()
      .setIsolationLevel("repeatable read")
      .execute((held) =>
        pipeline(Readable.from(linesOf(held, now, counts)), createGzip(), createWriteStream(part, { mode: 0o600 })),
      );
    await synced(part);
    await rename(part, file);
    return counts;
  } catch (error) {
    await rm(part, { force: true });
    throw new ServerError(serverProblem("backup-not-written", [], { file, why: errorText(error) }));
  }
}
