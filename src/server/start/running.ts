import { randomBytes } from "node:crypto";
import { Server } from "node:https";
import { hostname, networkInterfaces } from "node:os";
import { errorText } from "../../wording/problem";
import { type Outcome, runCommand } from "../backup/commands";
import { type OpenDatabase, openEmbedded, openPostgres } from "../database/openDatabase";
import type { ClassServer } from "../http/routes";
import { inviteFirst } from "../people/links";
import { keyFolder } from "../signing/keyFolder";
import { ownTls } from "../tls/ownTls";
import { isPrivateName } from "../tls/privateNames";
import { type Authority, givenTls, type Tls } from "../tls/tls";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";
import type { World } from "../world/world";
import { classServer } from "./classServer";
import { newPassword, newSchool } from "./machineLinks";
import type { MachineCommand, StartOptions } from "./options";
import { programVersion } from "./programVersion";
import { openingLine, type Say, SETTING_UP, SILENT } from "./startLines";

/** A class server that listens. */
export interface Running {
  /** Addresses of its page: this machine's first, then the network's. */
  readonly addresses: readonly string[];
  /** Path of the link that makes the first school, while there is none. */
  readonly firstLink: string | null;
  /** Where the data lies, without a password. */
  readonly place: string;
  /** Whether it speaks https. */
  readonly isSecure: boolean;
  /** The school's own authority, where its certificate is by that. */
  readonly authority: Authority | null;
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

const isEverywhere = (host: string): boolean => host === "0.0.0.0" || host === "::";

const hostsOf = (host: string): string[] => (isEverywhere(host) ? ["localhost", ...ownAddresses()] : [host]);

/** The certificate that was asked for; undefined for plain http. @throws {ServerError} */
async function openTls({ tls, data, host }: StartOptions): Promise<Tls | undefined> {
  if (tls !== "own") return tls && givenTls(tls);
  const machine = hostname().toLowerCase();
  // Only who listens everywhere is reached by more names than the one that was asked for.
  const more = isEverywhere(host) ? ["127.0.0.1", `${machine}.local`] : [];
  return ownTls(data, machine, [...hostsOf(host), ...more], Date.now());
}

/** Addresses of the page; those that the certificate cannot vouch for are left out. */
function addressesOf(hosts: readonly string[], port: number, tls: Tls | undefined): string[] {
  const vouched = tls?.authority ? hosts.filter(isPrivateName) : hosts;
  return vouched.map((host) => `${tls === undefined ? "http" : "https"}://${host}:${port}/`);
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

/** How often a server looks whether its certificate is to be made anew, ms. */
const RENEWING_MS = 12 * 3600 * 1000;

/** Shows the certificate as it is by now: it nears its end, or the machine has another address. Gives what ends this. */
function keepRenewed({ server }: ClassServer, options: StartOptions): () => void {
  if (options.tls !== "own" || !(server instanceof Server)) return () => {};
  const renew = () =>
    openTls(options).then(
      (tls) => tls && server.setSecureContext({ cert: tls.cert, key: tls.key }),
      // The certificate that it has stays; the next look may find the disk well again.
      (error: unknown) => process.stderr.write(`class: ${errorText(error)}\n`),
    );
  const looking = setInterval(() => void renew(), RENEWING_MS).unref();
  return () => clearInterval(looking);
}

const worldOf = (database: OpenDatabase, { data }: StartOptions): World => ({
  database: database.query,
  now: Date.now,
  chance: randomBytes,
  keys: keyFolder(data),
  channel: database.channel,
  appVersion: programVersion(),
});

async function serve(database: OpenDatabase, options: StartOptions, app: string): Promise<Running> {
  const world = worldOf(database, options);
  const tls = await openTls(options);
  const setting = { app, isBehindProxy: options.isBehindProxy, log: process.stderr, ...(tls && { tls }) };
  const server = await classServer(world, setting);
  try {
    const port = await listen(server, options);
    const stopRenewing = keepRenewed(server, options);
    return {
      addresses: addressesOf(hostsOf(options.host), port, tls),
      isSecure: tls !== undefined,
      authority: tls?.authority ?? null,
      firstLink: await firstLink(world),
      place: database.place,
      async stop() {
        stopRenewing();
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
function openAsked({ database, data }: StartOptions, say: Say): Promise<OpenDatabase> {
  if (database !== undefined) return openPostgres(database);
  return openEmbedded(data, ({ wasKilled }) => say(openingLine(data, wasKilled)));
}

/** Does something with the data while no server runs on it, and closes it again. @throws {ServerError} */
export async function withData(command: MachineCommand, options: StartOptions, say = SILENT): Promise<Outcome> {
  const database = await openAsked(options, say);
  try {
    if (command.verb === "new-password") return await newPassword(command.login, worldOf(database, options));
    if (command.verb === "new-school") return await newSchool(worldOf(database, options));
    return await runCommand(command, database, keyFolder(options.data), Date.now());
  } finally {
    await database.close();
  }
}

/**
 * Opens the database and listens.
 *
 * @param app - folder of the built app
 * @param say - takes a line for each step that may take long, before it
 * @throws {ServerError} where the database or the port cannot be had; nothing is left open then
 */
export async function start(options: StartOptions, app: string, say = SILENT): Promise<Running> {
  const database = await openAsked(options, say);
  try {
    say(SETTING_UP);
    return await serve(database, options, app);
  } catch (error) {
    await database.close();
    throw error;
  }
}
