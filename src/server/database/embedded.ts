import type { PGlite } from "@electric-sql/pglite";
import type { PostgresPool, PostgresPoolClient } from "kysely";

/**
 * The embedded database as the one connection that it is: whoever wants it waits until the one before has given it back,
 * so a transaction is never mixed with another's statements.
 */
export class EmbeddedPool implements PostgresPool {
  private readonly database: PGlite;
  private last: Promise<void> = Promise.resolve();

  constructor(database: PGlite) {
    this.database = database;
  }

  async connect(): Promise<PostgresPoolClient> {
    const before = this.last;
    let release: () => void = () => undefined;
    this.last = new Promise((resolve) => {
      release = resolve;
    });
    await before;
    return { query: this.query as PostgresPoolClient["query"], release };
  }

  async end(): Promise<void> {
    await this.last;
    await this.database.close();
  }

  private readonly query = async (text: string, parameters: readonly unknown[] = []) => {
    const { rows, affectedRows = 0 } = await this.database.query<object>(text, [...parameters]);
    const command = text.trimStart().split(/\s/, 1)[0]?.toUpperCase() ?? "";
    return { command, rowCount: command === "SELECT" ? rows.length : affectedRows, rows };
  };
}
