import { createHash } from "node:crypto";
import { createReadStream } from "node:fs";
import { createGunzip } from "node:zlib";
import { type Kysely, sql, type Transaction } from "kysely";
import type * as z from "zod/mini";
import { errorText } from "../../wording/problem";
import type { Tables } from "../database/tables/tables";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";
import { backupEnd, backupHead, rowLine, tableLine } from "./backupFile";
import { migrationsOf, type TableShape, tablesInOrder } from "./tablesInOrder";
import type { RowCounts } from "./writeBackup";

/** Rows that are put back at once. */
const PAGE = 200;

const damaged = (file: string, why: string) => new ServerError(serverProblem("backup-damaged", [], { file, why }));

/** Lines of a packed file. Read by hand: where unpacking fails, `readline` lets an error go that nobody catches. */
async function* linesOf(file: string): AsyncIterable<string> {
  const source = createReadStream(file);
  const unpacked = createGunzip().setEncoding("utf8");
  source.on("error", (error) => unpacked.destroy(error));
  try {
    let rest = "";
    for await (const text of source.pipe(unpacked)) {
      const parts = `${rest}${text}`.split("\n");
      rest = parts.pop() ?? "";
      yield* parts;
    }
    if (rest !== "") yield rest;
  } finally {
    source.destroy();
  }
}

/** The rows of a backup on their way back into their tables. Mutable. */
class Restoring {
  private table: TableShape | null = null;
  private waiting: unknown[][] = [];
  readonly counts: Record<string, number> = {};
  private readonly database: Transaction<Tables>;
  private readonly tables: readonly TableShape[];

  constructor(database: Transaction<Tables>, tables: readonly TableShape[]) {
    this.database = database;
    this.tables = tables;
  }

  async begin(name: string): Promise<void> {
    await this.flush();
    this.table = this.tables.find((one) => one.name === name) ?? null;
    this.counts[name] = 0;
  }

  async row(values: readonly unknown[]): Promise<void> {
    const { table } = this;
    if (table === null) throw new Error("a row without its table");
    this.waiting.push(
      values.map((value, k) =>
        table.bytes.includes(table.columns[k] ?? "") && typeof value === "string"
          ? Buffer.from(value, "base64")
          : value,
      ),
    );
    this.counts[table.name] = (this.counts[table.name] ?? 0) + 1;
    if (this.waiting.length >= PAGE) await this.flush();
  }

  async flush(): Promise<void> {
    const { table, waiting } = this;
    if (table === null || waiting.length === 0) return;
    const columns = sql.join(table.columns.map((column) => sql.ref(column)));
    const rows = sql.join(waiting.map((values) => sql`(${sql.join(values)})`));
    this.waiting = [];
    const into = sql`insert into ${sql.table(table.name)} (${columns}) overriding system value values ${rows}`;
    await into.execute(this.database);
  }
}

/** Numbers that the database gives go on after those that were put back. */
async function goOnCounting(database: Transaction<Tables>): Promise<void> {
  const { rows } = await sql<{ table: string; column: string }>`
    select table_name::text as table, column_name::text as column from information_schema.columns
    where table_schema = current_schema() and is_identity = 'YES'
  `.execute(database);
  for (const { table, column } of rows) {
    const highest = sql`select coalesce(max(${sql.ref(column)}), 0) + 1 from ${sql.table(table)}`;
    await sql`select setval(pg_get_serial_sequence(${table}, ${column}), (${highest}), false)`.execute(database);
  }
}

type Head = z.infer<typeof backupHead>;

async function fits(database: Transaction<Tables>, head: Head): Promise<boolean> {
  const here = [await migrationsOf(database), await tablesInOrder(database)];
  const there = [head.migrations, head.tables];
  return JSON.stringify(here) === JSON.stringify(there);
}

/** The lines of a backup, as they come. Mutable. */
class BackupReading {
  private readonly hash = createHash("sha256");
  private restoring: Restoring | null = null;
  private end: z.infer<typeof backupEnd> | null = null;
  private readonly database: Transaction<Tables>;
  private readonly file: string;

  constructor(database: Transaction<Tables>, file: string) {
    this.database = database;
    this.file = file;
  }

  async line(text: string): Promise<void> {
    if (this.end !== null) throw damaged(this.file, "it goes on after its end");
    const value: unknown = JSON.parse(text);
    const last = backupEnd.safeParse(value);
    if (last.success) {
      this.end = last.data;
      return;
    }
    this.hash.update(`${text}\n`);
    if (this.restoring === null) this.restoring = await this.begun(backupHead.parse(value));
    else await this.restore(value, this.restoring);
  }

  /** @returns how many rows were put back @throws {ServerError} "backup-damaged" where it is not whole */
  async ended(): Promise<RowCounts> {
    const { restoring, end, file } = this;
    if (restoring === null || end === null) throw damaged(file, "its end is missing");
    await restoring.flush();
    if (this.hash.digest("hex") !== end.sha256) throw damaged(file, "it is not what was written");
    return restoring.counts;
  }

  private async begun(head: Head): Promise<Restoring> {
    if (await fits(this.database, head)) return new Restoring(this.database, head.tables);
    throw new ServerError(serverProblem("backup-of-other-version", [], { file: this.file }));
  }

  private async restore(value: unknown, restoring: Restoring): Promise<void> {
    const table = tableLine.safeParse(value);
    if (table.success) await restoring.begin(table.data.table);
    else await restoring.row(rowLine.parse(value));
  }
}

async function putBack(database: Transaction<Tables>, file: string): Promise<RowCounts> {
  const reading = new BackupReading(database, file);
  for await (const line of linesOf(file)) await reading.line(line);
  const counts = await reading.ended();
  await goOnCounting(database);
  return counts;
}

/**
 * Puts a backup back into a database in which there is nothing yet: all of it, or nothing.
 *
 * @throws {ServerError} "database-not-empty", "backup-damaged", "backup-of-other-version"
 */
export async function restoreBackup(database: Kysely<Tables>, file: string, place: string): Promise<RowCounts> {
  try {
    return await database.transaction().execute(async (held) => {
      const school = await held.selectFrom("schools").select("id").limit(1).executeTakeFirst();
      if (school !== undefined) throw new ServerError(serverProblem("database-not-empty", [], { place }));
      // A link that a first start made would stand in the way of the one that comes back.
      await held.deleteFrom("invitations").execute();
      return await putBack(held, file);
    });
  } catch (error) {
    throw error instanceof ServerError ? error : damaged(file, errorText(error));
  }
}
