import { existsSync } from "node:fs";
import { cp, mkdir, mkdtemp, rename, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PGlite } from "@electric-sql/pglite";
import { packages } from "../../../package-lock.json";
import { type OpenDatabase, openEmbedded, openPostgres } from "../../../src/server/database/openDatabase";
import { startPostgres } from "./postgresServer";

/** A database of a test's own, and how it is done away with. */
export interface TestDatabase extends OpenDatabase {
  readonly remove: () => Promise<void>;
}

const CACHE = join(import.meta.dirname, "../../../node_modules/.cache");

/** An empty embedded database: making one takes seconds, copying it does not. Made once for each version. */
export async function emptyDatabase(): Promise<string> {
  const kept = join(CACHE, `empty-database-${packages["node_modules/@electric-sql/pglite"].version}`);
  if (existsSync(kept)) return kept;
  const made = await mkdtemp(join(await mkdir(CACHE, { recursive: true }).then(() => CACHE), "making-"));
  await (await PGlite.create(made)).close();
  // Another worker may have been quicker; either will do.
  await rename(made, kept).catch(() => undefined);
  return kept;
}

async function embedded(): Promise<TestDatabase> {
  const folder = await mkdtemp(join(tmpdir(), "gatefall-embedded-"));
  await cp(await emptyDatabase(), join(folder, "database"), { recursive: true });
  const database = await openEmbedded(folder);
  return {
    ...database,
    async remove() {
      await database.close();
      await rm(folder, { recursive: true, force: true });
    },
  };
}

async function postgres(): Promise<TestDatabase> {
  // No test of these pulls the plug: nothing needs to be on the disk.
  const server = await startPostgres(["-c", "fsync=off"]);
  const database = await openPostgres(await server.newDatabase("school"));
  return {
    ...database,
    async remove() {
      await database.close();
      await server.remove();
    },
  };
}

/** Both databases that the server runs on: every test of it runs on each. */
export const ENGINES = [
  { engine: "the embedded database", open: embedded },
  { engine: "PostgreSQL", open: postgres },
] as const;
