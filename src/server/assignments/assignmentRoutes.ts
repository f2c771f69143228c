import * as z from "zod/mini";
import {
  assignmentAnswer,
  assignmentList,
  assignmentPath,
  assignmentWithSheet,
  changedAssignment,
  newAssignment,
} from "../../school/wire/assignmentsWire";
import { classPath } from "../../school/wire/classWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { assignmentsOf, changeAssignment, endAssignment, makeAssignment, wholeAssignment } from "./keepAssignments";
import { withdrawAssignment } from "./withdrawAssignment";

const config = { needs: "instructor" } as const;

/** What an instructor assigns. */
export const assignmentRoutes: Routes = (server, world) => {
  server.post(
    "/api/assignments",
    { config, schema: { body: newAssignment, response: { 200: assignmentAnswer, ...refusals } } },
    (request) => makeAssignment(request.body, askingInstructor(request), world),
  );
  server.get(
    "/api/classes/:classId/assignments",
    { config, schema: { params: classPath, response: { 200: assignmentList, ...refusals } } },
    (request) => assignmentsOf(request.params.classId, askingInstructor(request), world),
  );
  server.get(
    "/api/assignments/:assignmentId",
    { config, schema: { params: assignmentPath, response: { 200: assignmentWithSheet, ...refusals } } },
    (request) => wholeAssignment(request.params.assignmentId, askingInstructor(request), world),
  );
  server.put(
    "/api/assignments/:assignmentId",
    {
      config,
      schema: { params: assignmentPath, body: changedAssignment, response: { 200: assignmentAnswer, ...refusals } },
    },
    (request) => changeAssignment(request.params.assignmentId, request.body, askingInstructor(request), world),
  );
  server.post(
    "/api/assignments/:assignmentId/end",
    { config, schema: { params: assignmentPath, response: { 200: assignmentAnswer, ...refusals } } },
    (request) => endAssignment(request.params.assignmentId, askingInstructor(request), world),
  );
  server.post(
    "/api/assignments/:assignmentId/withdraw",
    { config, schema: { params: assignmentPath, response: { 204: z.null(), ...refusals } } },
    async (request, reply) => {
      await withdrawAssignment(request.params.assignmentId, askingInstructor(request), world);
      reply.status(204);
      return null;
    },
  );
};
