import type { FastifyReply, FastifyRequest } from "fastify";
import * as z from "zod/mini";
import { passwordByLink, passwordChange, signInList, signInPath, signUp } from "../../school/wire/instructorsWire";
import { firstSignUp, signedIn, signIn } from "../../school/wire/peopleWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor, COOKIES } from "../http/whoAsks";
import { addressOf } from "../limits/addresses";
import { changePassword, makeSchool, passwordBy, signUpBy } from "./accounts";
import { endSignIn, type From, type SignedIn, signInAs, signInsOf, signOut, whoIsSignedIn } from "./signIns";

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

const fromOf = (request: FastifyRequest): From => ({
  address: addressOf(request),
  browser: request.headers["user-agent"] ?? "",
});

const signsIn = { response: { 200: signedIn, ...refusals } } as const;
const done = { response: { 204: z.null(), ...refusals } } as const;

/** How an instructor comes in: the links, name and password, and out again. */
export const signInRoutes: Routes = (server, world) => {
  server.post(
    "/api/schools",
    { config: { needs: "anyone" }, schema: { body: firstSignUp, ...signsIn } },
    async (request, reply) => keepSignedIn(reply, await makeSchool(request.body, fromOf(request), world)),
  );
  server.post(
    "/api/instructors",
    { config: { needs: "anyone" }, schema: { body: signUp, ...signsIn } },
    async (request, reply) => keepSignedIn(reply, await signUpBy(request.body, fromOf(request), world)),
  );
  server.post(
    "/api/password",
    { config: { needs: "anyone" }, schema: { body: passwordByLink, ...signsIn } },
    async (request, reply) => keepSignedIn(reply, await passwordBy(request.body, fromOf(request), world)),
  );
  server.post(
    "/api/sign-in",
    { config: { needs: "anyone" }, schema: { body: signIn, ...signsIn } },
    async (request, reply) => keepSignedIn(reply, await signInAs(request.body, fromOf(request), world)),
  );
  server.get("/api/me", { config: { needs: "instructor" }, schema: signsIn }, (request) =>
    whoIsSignedIn(askingInstructor(request), world),
  );
  server.post(
    "/api/me/password",
    { config: { needs: "instructor" }, schema: { body: passwordChange, ...done } },
    async (request, reply) => {
      await changePassword(request.body, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.get(
    "/api/me/sign-ins",
    { config: { needs: "instructor" }, schema: { response: { 200: signInList, ...refusals } } },
    (request) => signInsOf(askingInstructor(request), world),
  );
  server.post(
    "/api/me/sign-ins/:signInId/end",
    { config: { needs: "instructor" }, schema: { params: signInPath, ...done } },
    async (request, reply) => {
      await endSignIn(request.params.signInId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.post("/api/sign-out", { config: { needs: "instructor" }, schema: done }, async (request, reply) => {
    await signOut(request.cookies[COOKIES.instructor] ?? "", world);
    reply.clearCookie(COOKIES.instructor, { path: "/api" }).status(204);
    return null;
  });
};
