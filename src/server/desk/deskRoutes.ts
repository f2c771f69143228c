import { classCsv } from "../../progress/csv/classCsv";
import { askedDesk, deskAnswer } from "../../school/wire/deskWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { deskTable } from "./deskTable";

/** The desk of a class: its table as data, and as CSV. By the usual rule of readiness. */
export const deskRoutes: Routes = (server, world) => {
  server.get(
    "/api/classes/:classId/desk",
    {
      config: { needs: "instructor" },
      schema: { ...askedDesk, response: { 200: deskAnswer, ...refusals } },
      // Of a large class it is megabytes of our own making: to check them again by the schema takes longer than to make them.
      serializerCompiler: () => JSON.stringify,
    },
    async (request) => {
      const { table, hands } = await deskTable(
        { schoolId: askingInstructor(request).schoolId, ...request.params, ...request.query },
        world,
      );
      return { ...table, hands };
    },
  );
  server.get(
    "/api/classes/:classId/desk.csv",
    { config: { needs: "instructor" }, schema: askedDesk },
    async (request, reply) => {
      const of = { schoolId: askingInstructor(request).schoolId, ...request.params, ...request.query };
      const { table } = await deskTable(of, world);
      return reply
        .header("Content-Type", "text/csv; charset=utf-8")
        .header("Content-Disposition", 'attachment; filename="class.csv"')
        .send(classCsv(table));
    },
  );
};
