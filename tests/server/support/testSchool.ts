import manifest from "../../../package.json" with { type: "json" };
import type { ClassServer } from "../../../src/server/http/routes";
import { inviteFirst } from "../../../src/server/people/links";
import { classServer } from "../../../src/server/start/classServer";
import type { World } from "../../../src/server/world/world";
import { seededChance } from "../../../src/statistics/chance";
import type { TestDatabase } from "./engines";

/** 2026-03-02 08:00 UTC: when every test of the server begins. */
export const MORNING = Date.UTC(2026, 2, 2, 8);

/** A test asks as often as it wants. */
const NO_FLOODS = { address: 1e9, asker: 1e9 };

/** A server on a database, with a clock that a test turns and chance that repeats. */
export interface TestServer {
  readonly server: ClassServer;
  readonly world: World;
  /** Lets time pass, ms. */
  readonly pass: (ms: number) => void;
}

/** A server on a database, not listening: requests are handed in. @param seed - of its chance, other for each server on one database */
export async function testServer({ query, channel }: TestDatabase, seed = 1): Promise<TestServer> {
  let now = MORNING;
  const chance = seededChance(seed);
  const keys = new Map<string, Uint8Array>();
  const world: World = {
    database: query,
    now: () => now,
    chance: (bytes) => Uint8Array.from({ length: bytes }, () => Math.floor(chance() * 256)),
    keys: {
      read: async (fingerprint) => keys.get(fingerprint) ?? null,
      async write(fingerprint, privateKey) {
        keys.set(fingerprint, privateKey);
      },
    },
    channel,
    appVersion: manifest.version,
  };
  return {
    server: await classServer(world, { floods: NO_FLOODS }),
    world,
    pass(ms) {
      now += ms;
    },
  };
}

/** An instructor's browser: its cookie and the token that goes with every change. */
export interface Browser {
  readonly cookies: Record<string, string>;
  readonly headers: Record<string, string>;
  readonly schoolId: string;
}

/** A school with its head, who is signed in. @param school - also the head's sign-in name */
export async function testSchool({ server, world }: TestServer, school: string): Promise<Browser> {
  const token = await inviteFirst(world);
  const response = await server.inject({
    method: "POST",
    url: "/api/schools",
    payload: { token, school, name: `Head of ${school}`, login: school, password: "a long password" },
  });
  return browserOf(response);
}

/** What a browser keeps of a sign-in. */
export function browserOf(response: Awaited<ReturnType<ClassServer["inject"]>>): Browser {
  const { csrf, school } = response.json();
  const cookies = Object.fromEntries(response.cookies.map(({ name, value }) => [name, value]));
  return { cookies, headers: { "x-csrf": csrf }, schoolId: school.id };
}
