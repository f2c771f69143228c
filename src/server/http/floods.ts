import rateLimit from "@fastify/rate-limit";
import type { FastifyRequest } from "fastify";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { addressOf } from "../limits/addresses";
import type { ClassServer } from "./routes";

const MINUTE_MS = 60_000;

/** Most requests in a minute: from one address, which may be a whole school's, and of one bench or instructor. */
export interface Floods {
  readonly address: number;
  readonly asker: number;
}

/** What three hundred benches behind one address need at once, and more than one of them ever does. */
export const FLOODS: Floods = { address: 30_000, asker: 1200 };

/** Names remembered at once, so that many addresses cannot fill the memory. */
const REMEMBERED = 20_000;

const askerOf = ({ who, ip }: FastifyRequest): string => {
  if (who.role === "anyone") return `at ${addressOf({ ip })}`;
  return who.role === "bench" ? who.deviceId : who.instructorId;
};

type Limit = ReturnType<ClassServer["createRateLimit"]>;

const refuser = (limit: Limit) => async (request: FastifyRequest) => {
  const found = await limit(request);
  if (found.isAllowed || !found.isExceeded) return;
  throw new SchoolError(schoolProblem("wait-first", [], { seconds: Math.max(1, found.ttlInSeconds) }));
};

/** What holds floods of requests back, each server for itself; what can be guessed is held back in the database, `limits/guesses`. */
export interface FloodGates {
  /** Before anything is looked up. @throws {SchoolError} "wait-first" */
  readonly ofAddress: (request: FastifyRequest) => Promise<void>;
  /** When it is known who asks. @throws {SchoolError} "wait-first" */
  readonly ofAsker: (request: FastifyRequest) => Promise<void>;
}

/** Makes what holds floods back. */
export async function floodGates(server: ClassServer, { address, asker }: Floods): Promise<FloodGates> {
  await server.register(rateLimit, { global: false, cache: REMEMBERED });
  const timeWindow = MINUTE_MS;
  const byAddress = server.createRateLimit({ max: address, timeWindow, keyGenerator: addressOf });
  // What nobody signed in for comes from an address again, where many may sit.
  const byAsker = server.createRateLimit({
    max: ({ who }) => (who.role === "anyone" ? address : asker),
    timeWindow,
    keyGenerator: askerOf,
  });
  return { ofAddress: refuser(byAddress), ofAsker: refuser(byAsker) };
}
