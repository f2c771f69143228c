import * as z from "zod/mini";
import { classPath } from "../../school/wire/classWire";
import {
  classPersonPath,
  confirmedRoster,
  madeCards,
  newCards,
  newPerson,
  personChange,
  personPath,
  roster,
  rosterFile,
  rosterPreview,
  schoolPeople,
  takenRoster,
} from "../../school/wire/rosterWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { loseCard, makeCards } from "./cards";
import { leaveClass } from "./devices";
import { addPerson, changePerson, rosterOf, schoolPeopleOf } from "./roster";
import { previewFile, takeFile } from "./rosterFile";

const config = { needs: "instructor" } as const;
const done = { 204: z.null(), ...refusals } as const;

/** Longest file of names, with what JSON makes of it, bytes. */
const FILE_BYTES = 2 ** 20;

/** Who is in which class, and their join cards. */
export const rosterRoutes: Routes = (server, world) => {
  server.get("/api/people", { config, schema: { response: { 200: schoolPeople, ...refusals } } }, (request) =>
    schoolPeopleOf(askingInstructor(request), world),
  );
  server.post(
    "/api/people/:personId",
    { config, schema: { params: personPath, body: personChange, response: done } },
    async (request, reply) => {
      await changePerson(request.params.personId, request.body, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.get(
    "/api/classes/:classId/people",
    { config, schema: { params: classPath, response: { 200: roster, ...refusals } } },
    (request) => rosterOf(request.params.classId, askingInstructor(request), world),
  );
  server.post(
    "/api/classes/:classId/people",
    {
      config,
      schema: { params: classPath, body: newPerson, response: { 200: z.object({ id: z.string() }), ...refusals } },
    },
    async (request) => ({
      id: await addPerson(request.params.classId, request.body, askingInstructor(request), world),
    }),
  );
  server.post(
    "/api/classes/:classId/people/:personId/leave",
    { config, schema: { params: classPersonPath, response: done } },
    async (request, reply) => {
      const { classId, personId } = request.params;
      await leaveClass(classId, personId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.post(
    "/api/classes/:classId/people/:personId/card/revoke",
    { config, schema: { params: classPersonPath, response: done } },
    async (request, reply) => {
      const { classId, personId } = request.params;
      await loseCard(classId, personId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.post(
    "/api/classes/:classId/cards",
    { config, schema: { params: classPath, body: newCards, response: { 200: madeCards, ...refusals } } },
    (request) => makeCards(request.params.classId, request.body.personIds, askingInstructor(request), world),
  );
  server.post(
    "/api/classes/:classId/roster/preview",
    {
      config,
      bodyLimit: FILE_BYTES,
      schema: { params: classPath, body: rosterFile, response: { 200: rosterPreview, ...refusals } },
    },
    (request) => previewFile(request.params.classId, request.body.csv, askingInstructor(request), world),
  );
  server.post(
    "/api/classes/:classId/roster",
    {
      config,
      bodyLimit: FILE_BYTES,
      schema: { params: classPath, body: confirmedRoster, response: { 200: takenRoster, ...refusals } },
    },
    (request) => takeFile(request.params.classId, request.body, askingInstructor(request), world),
  );
};
