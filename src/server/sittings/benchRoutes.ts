import * as z from "zod/mini";
import {
  askedSitting,
  commentList,
  dueAnswer,
  givenSitting,
  personPath,
  sittingPath,
  sittingState,
  TRY_LIMITS,
  triesReceipt,
} from "../../school/wire/assignmentsWire";
import { sentTries } from "../../school/wire/sentTriesWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingBench } from "../http/whoAsks";
import { personAtBench } from "./atBench";
import { beginSitting } from "./beginSitting";
import { commentsOf, readComments } from "./comments";
import { dueFor } from "./due";
import { keepTries, sittingAtBench } from "./sentTries";
import { stateOfSitting } from "./sittingState";

const config = { needs: "bench" } as const;

/** What a bench asks of assignments: what is due, to begin, and what it sends of a sitting that goes on. */
export const benchSittingRoutes: Routes = (server, world) => {
  server.get(
    "/api/bench/people/:personId/due",
    { config, schema: { params: personPath, response: { 200: dueAnswer, ...refusals } } },
    async (request) => dueFor(await personAtBench(request.params.personId, askingBench(request), world), world),
  );
  server.post(
    "/api/bench/people/:personId/sittings",
    { config, schema: { params: personPath, body: askedSitting, response: { 200: givenSitting, ...refusals } } },
    (request) => beginSitting(request.body, request.params.personId, askingBench(request), world),
  );
  server.post(
    "/api/bench/sittings/:sittingId/tries",
    {
      config,
      bodyLimit: TRY_LIMITS.bytes,
      schema: { params: sittingPath, body: sentTries, response: { 200: triesReceipt, ...refusals } },
    },
    (request) => keepTries(request.params.sittingId, request.body, askingBench(request), world),
  );
  server.get(
    "/api/bench/sittings/:sittingId",
    { config, schema: { params: sittingPath, response: { 200: sittingState, ...refusals } } },
    async (request) => {
      const bench = askingBench(request);
      await sittingAtBench(request.params.sittingId, bench, world);
      return stateOfSitting(bench.schoolId, request.params.sittingId, world);
    },
  );
  server.get(
    "/api/bench/people/:personId/comments",
    { config, schema: { params: personPath, response: { 200: commentList, ...refusals } } },
    async (request) => commentsOf(await ownOf(request), world),
  );
  server.post(
    "/api/bench/people/:personId/comments/read",
    { config, schema: { params: personPath, response: { 204: z.null(), ...refusals } } },
    async (request, reply) => {
      await readComments(await ownOf(request), world);
      reply.status(204);
      return null;
    },
  );

  /** The school and the person alone: comments on whatever that person sat. */
  async function ownOf(
    request: Parameters<typeof askingBench>[0] & { readonly params: { readonly personId: string } },
  ) {
    const { schoolId, personId } = await personAtBench(request.params.personId, askingBench(request), world);
    return { schoolId, personId };
  }
};
