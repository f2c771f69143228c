import type { FastifyReply, FastifyRequest } from "fastify";
import * as z from "zod/mini";
import { joinByCard, joinByCardCode, joinByCode, joined, leaving } from "../../school/wire/peopleWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingBench, COOKIES } from "../http/whoAsks";
import { addressOf } from "../limits/addresses";
import { benchNow, leaveBench, sawBench } from "./benches";
import { type JoinedBench, type JoiningFrom, joinWithCard, joinWithCardCode, joinWithCode } from "./joining";

/** How long a bench's browser keeps its cookie without being there, s: a school year. Browsers keep none for longer than 400 days. */
const BENCH_STAYS_S = 370 * 24 * 3600;

function keepBench(reply: FastifyReply, secret: string): void {
  reply.setCookie(COOKIES.bench, secret, {
    httpOnly: true,
    sameSite: "strict",
    path: "/api",
    secure: reply.request.protocol === "https",
    maxAge: BENCH_STAYS_S,
  });
}

const secretOf = (request: FastifyRequest): string => request.cookies[COOKIES.bench] ?? "";
const fromOf = (request: FastifyRequest): JoiningFrom => ({ address: addressOf(request), secret: secretOf(request) });

function answer(reply: FastifyReply, { secret, answer: told }: JoinedBench): JoinedBench["answer"] {
  keepBench(reply, secret);
  return told;
}

const tellsJoined = { response: { 200: joined, ...refusals } } as const;

/** How a bench comes into a class and out again. */
export const joinRoutes: Routes = (server, world) => {
  server.post(
    "/api/join",
    { config: { needs: "anyone" }, schema: { body: joinByCode, ...tellsJoined } },
    async (request, reply) => answer(reply, await joinWithCode(request.body, fromOf(request), world)),
  );
  server.post(
    "/api/join/card",
    { config: { needs: "anyone" }, schema: { body: joinByCard, ...tellsJoined } },
    async (request, reply) => answer(reply, await joinWithCard(request.body, fromOf(request), world)),
  );
  server.post(
    "/api/join/card-code",
    { config: { needs: "anyone" }, schema: { body: joinByCardCode, ...tellsJoined } },
    async (request, reply) => answer(reply, await joinWithCardCode(request.body, fromOf(request), world)),
  );
  server.get("/api/bench", { config: { needs: "bench" }, schema: tellsJoined }, async (request, reply) => {
    const bench = askingBench(request);
    await sawBench(bench, world);
    keepBench(reply, secretOf(request));
    return benchNow(bench, world);
  });
  server.post(
    "/api/bench/leave",
    { config: { needs: "bench" }, schema: { body: leaving, response: { 204: z.null(), ...refusals } } },
    async (request, reply) => {
      const stays = await leaveBench(askingBench(request), request.body.personId ?? null, world);
      if (!stays) reply.clearCookie(COOKIES.bench, { path: "/api" });
      reply.status(204);
      return null;
    },
  );
};
