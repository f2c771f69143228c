import { randomUUID } from "node:crypto";
import { rmSync } from "node:fs";
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { sql } from "kysely";
import { migrate } from "../../../src/server/database/migrate";
import { type OpenDatabase, openEmbedded, openPostgres } from "../../../src/server/database/openDatabase";
import { layEmptyDatabase } from "./emptyDatabase";
import { startPostgres } from "./postgresServer";
import { RUN } from "./runDatabases";

/** A database of a test's own, and how it is done away with. */
export interface TestDatabase extends OpenDatabase {
  readonly remove: () => Promise<void>;
}

/** Embedded databases that no test has now, without a table. To start one takes a second, to empty it does not. */
const idle: OpenDatabase[] = [];

async function startEmbedded(): Promise<OpenDatabase> {
  const folder = await mkdtemp(join(process.env[RUN.folder] ?? tmpdir(), "gatefall-embedded-"));
  process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
  await layEmptyDatabase(folder);
  return openEmbedded(folder);
}

async function embedded(): Promise<TestDatabase> {
  const database = idle.pop() ?? (await startEmbedded());
  await migrate(database.query);
  return {
    ...database,
    async remove() {
      await sql`drop schema public cascade`.execute(database.query);
      await sql`create schema public`.execute(database.query);
      idle.push(database);
    },
  };
}

/** A database of the run's PostgreSQL, or where there is no run of a server of its own. */
async function newAddress(): Promise<{ readonly address: string; readonly forget: () => Promise<void> }> {
  const door = process.env[RUN.postgres];
  if (door === undefined) {
    // No test of these pulls the plug: nothing needs to be on the disk.
    const server = await startPostgres(["-c", "fsync=off"]);
    return { address: await server.newDatabase("school"), forget: server.remove };
  }
  const ask = async (method: "PUT" | "DELETE", name: string) => {
    const answer = await fetch(`${door}/${name}`, { method });
    const text = await answer.text();
    if (!answer.ok) throw new Error(text);
    return text;
  };
  const name = `school_${randomUUID()}`;
  return { address: await ask("PUT", name), forget: () => ask("DELETE", name).then(() => undefined) };
}

async function postgres(): Promise<TestDatabase> {
  const { address, forget } = await newAddress();
  const database = await openPostgres(address);
  return {
    ...database,
    async remove() {
      await database.close();
      await forget();
    },
  };
}

/** Both databases that the server runs on: every test of it runs on each. */
export const ENGINES = [
  { engine: "the embedded database", open: embedded },
  { engine: "PostgreSQL", open: postgres },
] as const;
