import * as z from "zod/mini";
import { strict } from "../../lock/fieldSchemas";
import { id } from "../../records/fields";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import { attemptAnswer } from "../../school/wire/liveWire";

import { isFromOwnPage } from "../http/guard";
import { refusals } from "../http/refusals";
import type { ClassServer, Routes } from "../http/routes";
import { askingBench, askingInstructor } from "../http/whoAsks";
import { foundClass } from "../people/found";
import type { World } from "../world/world";
import { attemptOf, layDown } from "./attempts";
import { BenchSocket } from "./benchSocket";
import { streamBoard } from "./boardStream";
import { lowerHand } from "./hands";
import { LiveHub } from "./liveHub";

const ofClass = strict({ classId: id });
const ofBench = strict({ classId: id, deviceId: id });

/** A bench's own connection: it tells, and hears about its hand. */
function benchRoute(server: ClassServer, hub: LiveHub, world: World): void {
  server.get(
    "/api/bench/live",
    {
      websocket: true,
      config: { needs: "bench" },
      schema: { hide: true },
      // No page of another server may open it with the cookie of a bench.
      preValidation: async (request) => {
        if (!isFromOwnPage(request)) throw new SchoolError(schoolProblem("from-elsewhere", []));
      },
    },
    (socket, request) => new BenchSocket(socket, request, askingBench(request), hub, world).serve(),
  );
}

/** What an instructor's board asks for. */
function boardRoutes(server: ClassServer, hub: LiveHub, world: World): void {
  const open = new Set<() => void>();
  server.get(
    "/api/classes/:classId/live",
    { config: { needs: "instructor" }, schema: { params: ofClass } },
    async (request, reply) => {
      const of = { schoolId: askingInstructor(request).schoolId, classId: request.params.classId };
      await foundClass(world.database, of);
      const end = () => void reply.raw.end();
      open.add(end);
      reply.raw.on("close", () => open.delete(end));
      await streamBoard(request, reply, of, hub, world);
    },
  );
  server.addHook("preClose", async () => {
    for (const end of open) end();
    await hub.end();
  });
  server.get(
    "/api/classes/:classId/live/:deviceId/attempt",
    { config: { needs: "instructor" }, schema: { params: ofBench, response: { 200: attemptAnswer, ...refusals } } },
    async (request) => {
      const place = { schoolId: askingInstructor(request).schoolId, ...request.params };
      await foundClass(world.database, place);
      return { attempt: await attemptOf(place, hub, world) };
    },
  );
  server.post(
    "/api/classes/:classId/live/:deviceId/lower-hand",
    { config: { needs: "instructor" }, schema: { params: ofBench, response: { 204: z.null(), ...refusals } } },
    async (request, reply) => {
      const place = { schoolId: askingInstructor(request).schoolId, ...request.params };
      await foundClass(world.database, place);
      if (await lowerHand(place, world)) hub.setHand(place, null);
      reply.status(204);
      return null;
    },
  );
}

/** Benches that tell how it goes, and the boards that show it. */
export const liveRoutes: Routes = (server, world) => {
  const hub = new LiveHub(world);
  hub.onWanted((place) => {
    const attempt = hub.attemptAt(place);
    if (attempt) layDown(place, attempt, world).catch(() => undefined);
  });
  benchRoute(server, hub, world);
  boardRoutes(server, hub, world);
};
