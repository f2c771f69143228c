import type { PGlite } from "@electric-sql/pglite";
import type { PostgresPool, PostgresPoolClient } from "kysely";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";

/** No room on the disk, and a disk that cannot be read or written. Source: PostgreSQL documentation, appendix A. */
const DISK = ["53100", "58030"];

/** From one try to open the database anew to the next, ms. */
const RETRY_MS = 2000;

/** Statements that need no room: whatever else there is may write. */
const WRITES_NOTHING = /^\s*(select|begin|start transaction|commit|rollback)\b/i;

const isOfDisk = (error: unknown): boolean =>
  error instanceof Error && "code" in error && typeof error.code === "string" && DISK.includes(error.code);

/** What the pool has of the folder that the database lies in. */
interface EmbeddedFolder {
  /** Opens the same database anew. */
  readonly open: () => Promise<PGlite>;
  /** Whether there is room on its disk to write. */
  readonly hasRoom: () => Promise<boolean>;
}

/**
 * The embedded database as the one connection that it is: whoever wants it waits until the one before has given it back,
 * so a transaction is never mixed with another's statements.
 *
 * A database that finds no room for its log never answers again, and keeps the whole process busy. So nothing is written
 * while the disk is nearly full: whoever wants to is told to try again. Where it met the full disk all the same, it is asked
 * nothing more, and opened anew from its folder as after a crash, once that can be done: whatever was committed is in its log.
 */
export class EmbeddedPool implements PostgresPool {
  /** Null while there is none that can be asked. */
  private database: PGlite | null;
  private readonly folder: EmbeddedFolder;
  /** What the disk did, and when the database was last tried to be opened anew. */
  private lastOfDisk: unknown = null;
  private triedAt = Number.NEGATIVE_INFINITY;
  private last: Promise<void> = Promise.resolve();

  constructor(database: PGlite, folder: EmbeddedFolder) {
    this.database = database;
    this.folder = folder;
  }

  async connect(): Promise<PostgresPoolClient> {
    const before = this.last;
    let release: () => void = () => undefined;
    this.last = new Promise((resolve) => {
      release = resolve;
    });
    await before;
    try {
      const query = this.queryOf(await this.opened());
      return { query: query as PostgresPoolClient["query"], release };
    } catch (error) {
      release();
      throw error;
    }
  }

  async end(): Promise<void> {
    await this.last;
    await this.database?.close();
  }

  private async opened(): Promise<PGlite> {
    if (this.database !== null) return this.database;
    const now = performance.now();
    if (now - this.triedAt < RETRY_MS) throw this.lastOfDisk;
    this.triedAt = now;
    try {
      this.database = await this.folder.open();
    } catch {
      // There is no room to open it either.
      throw this.lastOfDisk;
    }
    return this.database;
  }

  private queryOf(database: PGlite) {
    return async (text: string, parameters: readonly unknown[] = []) => {
      // What a transaction rolls back is gone with the database that it was begun in.
      if (this.database !== database) throw this.lastOfDisk;
      if (!WRITES_NOTHING.test(text) && !(await this.folder.hasRoom())) {
        throw new SchoolError(schoolProblem("try-again", []));
      }
      return this.ask(database, text, parameters);
    };
  }

  private async ask(database: PGlite, text: string, parameters: readonly unknown[]) {
    try {
      const { rows, affectedRows = 0 } = await database.query<object>(text, [...parameters]);
      const command = text.trimStart().split(/\s/, 1)[0]?.toUpperCase() ?? "";
      return { command, rowCount: command === "SELECT" ? rows.length : affectedRows, rows };
    } catch (error) {
      if (isOfDisk(error)) {
        this.database = null;
        this.lastOfDisk = error;
      }
      throw error;
    }
  }
}
