import { existsSync } from "node:fs";
import { cp, mkdir, mkdtemp, rename } from "node:fs/promises";
import { join } from "node:path";
import { PGlite } from "@electric-sql/pglite";
import lock from "../../../package-lock.json" with { type: "json" };

const CACHE = join(import.meta.dirname, "../../../node_modules/.cache");

/** An empty embedded database. Made once for each version. */
async function emptyDatabase(): Promise<string> {
  const kept = join(CACHE, `empty-database-${lock.packages["node_modules/@electric-sql/pglite"].version}`);
  if (existsSync(kept)) return kept;
  await mkdir(CACHE, { recursive: true });
  const made = await mkdtemp(join(CACHE, "making-"));
  await (await PGlite.create(made)).close();
  // Another worker may have been quicker; either will do.
  await rename(made, kept).catch(() => undefined);
  return kept;
}

/** Lays an empty embedded database into a class server's folder: making one takes seconds, copying it does not. */
export async function layEmptyDatabase(folder: string): Promise<void> {
  await cp(await emptyDatabase(), join(folder, "database"), { recursive: true });
}
