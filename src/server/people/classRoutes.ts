import * as z from "zod/mini";
import {
  classCode,
  classList,
  className,
  classPath,
  codeList,
  deviceList,
  devicePath,
  newCode,
  revokedCode,
  schoolClass,
} from "../../school/wire/classWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { classesOf, endClass, makeClass, renameClass } from "./classes";
import { codesOf, makeCode, revokeCode } from "./codes";
import { devicesOf, signOutDevice } from "./devices";

const config = { needs: "instructor" } as const;
const done = { 204: z.null(), ...refusals } as const;

/** Classes of a school, their codes and their benches. */
export const classRoutes: Routes = (server, world) => {
  server.get("/api/classes", { config, schema: { response: { 200: classList, ...refusals } } }, (request) =>
    classesOf(askingInstructor(request), world),
  );
  server.post(
    "/api/classes",
    { config, schema: { body: className, response: { 200: schoolClass, ...refusals } } },
    (request) => makeClass(request.body.name, askingInstructor(request), world),
  );
  server.post(
    "/api/classes/:classId/name",
    { config, schema: { params: classPath, body: className, response: done } },
    async (request, reply) => {
      await renameClass(request.params.classId, request.body.name, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.post(
    "/api/classes/:classId/end",
    { config, schema: { params: classPath, response: done } },
    async (request, reply) => {
      await endClass(request.params.classId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.get(
    "/api/classes/:classId/codes",
    { config, schema: { params: classPath, response: { 200: codeList, ...refusals } } },
    (request) => codesOf(request.params.classId, askingInstructor(request), world),
  );
  server.post(
    "/api/classes/:classId/codes",
    { config, schema: { params: classPath, body: newCode, response: { 200: classCode, ...refusals } } },
    (request) => makeCode(request.params.classId, request.body.hours, askingInstructor(request), world),
  );
  server.post(
    "/api/classes/:classId/codes/revoke",
    { config, schema: { params: classPath, body: revokedCode, response: done } },
    async (request, reply) => {
      await revokeCode(request.params.classId, request.body.code, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
  server.get(
    "/api/classes/:classId/devices",
    { config, schema: { params: classPath, response: { 200: deviceList, ...refusals } } },
    (request) => devicesOf(request.params.classId, askingInstructor(request), world),
  );
  server.post(
    "/api/devices/:deviceId/sign-out",
    { config, schema: { params: devicePath, response: done } },
    async (request, reply) => {
      await signOutDevice(request.params.deviceId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
};
