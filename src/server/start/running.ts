import { randomBytes } from "node:crypto";
import { networkInterfaces } from "node:os";
import { errorText } from "../../wording/problem";
import { type DataCommand, type Outcome, runCommand } from "../backup/commands";
import { type OpenDatabase, openEmbedded, openPostgres } from "../database/openDatabase";
import type { ClassServer } from "../http/routes";
import { inviteFirst } from "../people/links";
import { keyFolder } from "../signing/keyFolder";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";
import type { World } from "../world/world";
import { classServer } from "./classServer";
import type { StartOptions } from "./options";
import { programVersion } from "./programVersion";

/** A class server that listens. */
export interface Running {
  /** Addresses of its page: this machine's first, then the network's. */
  readonly addresses: readonly string[];
  /** Path of the link that makes the first school, while there is none. */
  readonly firstLink: string | null;
  /** Where the data lies, without a password. */
  readonly place: string;
  /** Lets requests under way end, then closes the database. */
  readonly stop: () => Promise<void>;
}

/** How long a server that stops waits for requests under way, ms; browsers keep connections open that ask nothing. */
const LAST_REQUESTS_MS = 5000;

/** Addresses of this machine on its networks. */
const ownAddresses = (): string[] =>
  Object.values(networkInterfaces()).flatMap((list) =>
    (list ?? []).flatMap(({ family, internal, address }) => (family === "IPv4" && !internal ? [address] : [])),
  );

function addressesOf(host: string, port: number): string[] {
  const hosts = host === "0.0.0.0" || host === "::" ? ["localhost", ...ownAddresses()] : [host];
  return hosts.map((one) => `http://${one}:${port}/`);
}

async function firstLink(world: World): Promise<string | null> {
  const school = await world.database.selectFrom("schools").select("id").limit(1).executeTakeFirst();
  return school === undefined ? `#/instructor/first?token=${await inviteFirst(world)}` : null;
}

async function listen(server: ClassServer, { host, port }: StartOptions): Promise<number> {
  try {
    await server.listen({ host, port });
  } catch (error) {
    const isTaken = error instanceof Error && "code" in error && error.code === "EADDRINUSE";
    throw new ServerError(
      isTaken
        ? serverProblem("port-taken", [], { port })
        : serverProblem("cannot-listen", [], { host, why: errorText(error) }),
    );
  }
  const [address] = server.addresses();
  return typeof address === "object" ? address.port : port;
}

async function serve(database: OpenDatabase, options: StartOptions, app: string): Promise<Running> {
  const world: World = {
    database: database.query,
    now: Date.now,
    chance: randomBytes,
    keys: keyFolder(options.data),
    channel: database.channel,
    appVersion: programVersion(),
  };
  const server = await classServer(world, { app, isBehindProxy: options.isBehindProxy });
  try {
    const port = await listen(server, options);
    return {
      addresses: addressesOf(options.host, port),
      firstLink: await firstLink(world),
      place: database.place,
      async stop() {
        const patience = setTimeout(() => server.server.closeAllConnections(), LAST_REQUESTS_MS);
        await server.close();
        clearTimeout(patience);
        await database.close();
      },
    };
  } catch (error) {
    await server.close();
    throw error;
  }
}

/** Opens the database that was asked for. @throws {ServerError} */
const openAsked = ({ database, data }: StartOptions): Promise<OpenDatabase> =>
  database === undefined ? openEmbedded(data) : openPostgres(database);

/** Does something with the data while no server runs on it, and closes it again. @throws {ServerError} */
export async function withData(command: DataCommand, options: StartOptions): Promise<Outcome> {
  const database = await openAsked(options);
  try {
    return await runCommand(command, database, keyFolder(options.data), Date.now());
  } finally {
    await database.close();
  }
}

/**
 * Opens the database and listens.
 *
 * @param app - folder of the built app
 * @throws {ServerError} where the database or the port cannot be had; nothing is left open then
 */
export async function start(options: StartOptions, app: string): Promise<Running> {
  const database = await openAsked(options);
  try {
    return await serve(database, options, app);
  } catch (error) {
    await database.close();
    throw error;
  }
}
