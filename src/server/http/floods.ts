import rateLimit from "@fastify/rate-limit";
import type { FastifyRequest } from "fastify";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { addressOf } from "../limits/addresses";
import type { ClassServer } from "./routes";

const MINUTE_MS = 60_000;

/** Most requests in a minute: of what nobody is signed in for from one address, and of one bench or instructor. */
export interface Floods {
  readonly address: number;
  readonly asker: number;
}

/** An address may be a whole school's, where three hundred benches open the app at once; a bench tells ten times a second how it is. */
export const FLOODS: Floods = { address: 30_000, asker: 1200 };

/** Askers remembered at once, so that many addresses cannot fill the memory. */
const REMEMBERED = 20_000;

/** The bench or the instructor; where nobody is signed in, and where that is not known yet, the address. */
function askerOf(request: FastifyRequest): string {
  // Undefined in a request that was refused before anybody was looked up.
  const who: FastifyRequest["who"] | undefined = request.who;
  if (who === undefined || who.role === "anyone") return `at ${addressOf(request)}`;
  return who.role === "bench" ? who.deviceId : who.instructorId;
}

/**
 * Makes what holds floods of requests back, each server for itself; what can be guessed is held back in the database,
 * `limits/guesses`.
 *
 * @returns what each request goes through, whether it may pass the guard or not; it throws a SchoolError, "wait-first"
 */
export async function floodGate(
  server: ClassServer,
  { address, asker }: Floods,
): Promise<(request: FastifyRequest) => Promise<void>> {
  await server.register(rateLimit, { global: false, cache: REMEMBERED });
  const limit = server.createRateLimit({
    max: (_request, key) => (key.startsWith("at ") ? address : asker),
    timeWindow: MINUTE_MS,
    keyGenerator: askerOf,
  });
  return async (request) => {
    const found = await limit(request);
    if (found.isAllowed || !found.isExceeded) return;
    throw new SchoolError(schoolProblem("wait-first", [], { seconds: Math.max(1, found.ttlInSeconds) }));
  };
}
