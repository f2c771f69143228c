import {
  assignmentPath,
  classResults,
  commentList,
  difficultyAnswer,
  newComment,
  sittingMotions,
  sittingPath,
  sittingState,
} from "../../school/wire/assignmentsWire";
import { classPath } from "../../school/wire/classWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { commentsOf, makeComment } from "./comments";
import { difficultyOf } from "./difficulty";
import { motionsOf } from "./motions";
import { resultsOfClass } from "./results";
import { stateOfSitting } from "./sittingState";

const config = { needs: "instructor" } as const;

/** What an instructor sees of sittings, and says of them. */
export const sittingRoutes: Routes = (server, world) => {
  server.get(
    "/api/classes/:classId/results",
    { config, schema: { params: classPath, response: { 200: classResults, ...refusals } } },
    (request) => resultsOfClass(request.params.classId, askingInstructor(request), world),
  );
  server.get(
    "/api/assignments/:assignmentId/difficulty",
    { config, schema: { params: assignmentPath, response: { 200: difficultyAnswer, ...refusals } } },
    (request) => difficultyOf(request.params.assignmentId, askingInstructor(request), world),
  );
  server.get(
    "/api/sittings/:sittingId",
    { config, schema: { params: sittingPath, response: { 200: sittingState, ...refusals } } },
    (request) => stateOfSitting(askingInstructor(request).schoolId, request.params.sittingId, world),
  );
  server.get(
    "/api/sittings/:sittingId/motions",
    { config, schema: { params: sittingPath, response: { 200: sittingMotions, ...refusals } } },
    (request) => motionsOf(askingInstructor(request).schoolId, request.params.sittingId, world),
  );
  server.get(
    "/api/sittings/:sittingId/comments",
    { config, schema: { params: sittingPath, response: { 200: commentList, ...refusals } } },
    (request) => commentsOf({ ...request.params, schoolId: askingInstructor(request).schoolId }, world),
  );
  server.post(
    "/api/sittings/:sittingId/comments",
    { config, schema: { params: sittingPath, body: newComment, response: { 200: commentList, ...refusals } } },
    (request) => makeComment(request.params.sittingId, request.body.text, askingInstructor(request), world),
  );
};
