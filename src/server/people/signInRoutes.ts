import type { FastifyReply } from "fastify";
import * as z from "zod/mini";
import { firstSignUp, signedIn, signIn } from "../../school/wire/peopleWire";
import { problemAnswer } from "../../school/wire/problemWire";
import type { Routes } from "../http/routes";
import { askingInstructor, COOKIES } from "../http/whoAsks";
import { makeSchool, type SignedIn, signInAs, signOut, whoIsSignedIn } from "./signIns";

function keepSignedIn(reply: FastifyReply, { secret, answer }: SignedIn): SignedIn["answer"] {
  const isSecure = reply.request.protocol === "https";
  const expires = new Date(answer.expiresAt);
  reply.setCookie(COOKIES.instructor, secret, {
    httpOnly: true,
    sameSite: "strict",
    path: "/api",
    secure: isSecure,
    expires,
  });
  return answer;
}

const refusals = { "4xx": problemAnswer, "5xx": problemAnswer } as const;

/** How an instructor comes in: the first link of a school, name and password, and out again. */
export const signInRoutes: Routes = (server, world) => {
  server.post(
    "/api/schools",
    { config: { needs: "anyone" }, schema: { body: firstSignUp, response: { 200: signedIn, ...refusals } } },
    async ({ body }, reply) => keepSignedIn(reply, await makeSchool(body, world)),
  );
  server.post(
    "/api/sign-in",
    { config: { needs: "anyone" }, schema: { body: signIn, response: { 200: signedIn, ...refusals } } },
    async ({ body }, reply) => keepSignedIn(reply, await signInAs(body, world)),
  );
  server.get(
    "/api/me",
    { config: { needs: "instructor" }, schema: { response: { 200: signedIn, ...refusals } } },
    (request) => whoIsSignedIn(askingInstructor(request), world),
  );
  server.post(
    "/api/sign-out",
    { config: { needs: "instructor" }, schema: { response: { 204: z.null(), ...refusals } } },
    async (request, reply) => {
      await signOut(request.cookies[COOKIES.instructor] ?? "", world);
      reply.clearCookie(COOKIES.instructor, { path: "/api" }).status(204);
      return null;
    },
  );
};
