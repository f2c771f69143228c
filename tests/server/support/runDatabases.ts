import { mkdtempSync } from "node:fs";
import { rm } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type PostgresServer, startPostgres } from "./postgresServer";

/** Variables by which a run's workers know where to ask for a database, and where to put embedded ones. */
export const RUN = { postgres: "GATEFALL_TEST_POSTGRES", folder: "GATEFALL_TEST_FOLDER" } as const;

/** What is gone with the run need not outlast the machine. */
const FLAGS = ["-c", "fsync=off", "-c", "max_connections=200"];

/**
 * One PostgreSQL for a whole run of the unit tests, started when the first test asks for a database of it. Workers are
 * ended without a word, so what they leave is cleared away here.
 */
export async function setup(): Promise<() => Promise<void>> {
  let started: Promise<PostgresServer> | undefined;
  const door = createServer(async ({ method, url = "" }, response) => {
    try {
      started ??= startPostgres(FLAGS);
      const postgres = await started;
      const name = url.slice(1);
      response.end(method === "DELETE" ? await postgres.dropDatabase(name) : await postgres.newDatabase(name));
    } catch (error) {
      response.writeHead(500).end(String(error));
    }
  });
  await new Promise<void>((resolve) => door.listen(0, "127.0.0.1", resolve));
  const folder = mkdtempSync(join(tmpdir(), "gatefall-run-"));
  process.env[RUN.postgres] = `http://127.0.0.1:${(door.address() as AddressInfo).port}`;
  process.env[RUN.folder] = folder;
  return async () => {
    door.closeAllConnections();
    door.close();
    await (await started)?.remove();
    await rm(folder, { recursive: true, force: true });
  };
}
