import * as z from "zod/mini";
import {
  instructorList,
  instructorPath,
  invitation,
  linkPath,
  madeLink,
  openLinks,
} from "../../school/wire/instructorsWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { instructorsOf, setDisabled } from "./instructors";
import { invite, linkForPassword, linksOf, revokeLink } from "./links";

const head = { needs: "head" } as const;
const done = { 204: z.null(), ...refusals } as const;

/** What the head of a school does about those who teach there. */
export const instructorRoutes: Routes = (server, world) => {
  server.get(
    "/api/instructors",
    { config: head, schema: { response: { 200: instructorList, ...refusals } } },
    (request) => instructorsOf(askingInstructor(request), world),
  );
  for (const [act, isDisabled] of [
    ["disable", true],
    ["enable", false],
  ] as const) {
    server.post(
      `/api/instructors/:instructorId/${act}`,
      { config: head, schema: { params: instructorPath, response: done } },
      async (request, reply) => {
        await setDisabled(request.params.instructorId, isDisabled, askingInstructor(request), world);
        reply.status(204);
        return null;
      },
    );
  }
  server.post(
    "/api/instructors/:instructorId/password-link",
    { config: head, schema: { params: instructorPath, response: { 200: madeLink, ...refusals } } },
    (request) => linkForPassword(request.params.instructorId, askingInstructor(request), world),
  );
  server.get("/api/links", { config: head, schema: { response: { 200: openLinks, ...refusals } } }, (request) =>
    linksOf(askingInstructor(request), world),
  );
  server.post(
    "/api/links",
    { config: head, schema: { body: invitation, response: { 200: madeLink, ...refusals } } },
    (request) => invite(request.body.role, askingInstructor(request), world),
  );
  server.post(
    "/api/links/:linkId/revoke",
    { config: head, schema: { params: linkPath, response: done } },
    async (request, reply) => {
      await revokeLink(request.params.linkId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
};
