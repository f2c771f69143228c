import type { FastifyRequest } from "fastify";
import { mayDo, type Role } from "../../school/rights";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { isSameText } from "../security/secrets";
import type { World } from "../world/world";
import { whoAsks } from "./whoAsks";

const READING = ["GET", "HEAD", "OPTIONS"];

/** Whether a request was made by a page of this server. A browser says so itself; what is no browser sends no cookie unasked. */
export function isFromOwnPage({ headers, host }: FastifyRequest): boolean {
  const { origin } = headers;
  if (headers["sec-fetch-site"] === "cross-site") return false;
  if (origin === undefined) return true;
  return URL.canParse(origin) && new URL(origin).host === host;
}

/**
 * Lets a request through to its route, or not: the role that the route names, and for every change that it comes from a
 * page of this server and, from an instructor, with the token that the sign-in gave.
 *
 * @throws {SchoolError} "not-signed-in", "not-allowed", "from-elsewhere"
 */
export async function guard(request: FastifyRequest, world: World): Promise<void> {
  const needed: Role = request.routeOptions.config.needs ?? "head";
  const isChange = !READING.includes(request.method);
  if (isChange && !isFromOwnPage(request)) throw new SchoolError(schoolProblem("from-elsewhere", []));
  request.who = await whoAsks(request, needed, world);
  if (mayDo(request.who.role, needed)) {
    if (isChange && "csrf" in request.who && !isSameText(String(request.headers["x-csrf"] ?? ""), request.who.csrf)) {
      throw new SchoolError(schoolProblem("from-elsewhere", []));
    }
    return;
  }
  throw new SchoolError(schoolProblem(request.who.role === "anyone" ? "not-signed-in" : "not-allowed", []));
}
