import * as z from "zod/mini";
import { oneOf, strict } from "../../lock/fieldSchemas";
import { classCsv } from "../../progress/csv/classCsv";
import { SOURCE_KINDS } from "../../realdial/sources/sourceKinds";
import { id } from "../../records/fields";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { deskTable } from "./deskTable";

const asked = {
  params: strict({ classId: id }),
  querystring: strict({ hand: z.optional(oneOf([...SOURCE_KINDS, "mixed"])) }),
};

/** The desk of a class: its table as data, and as CSV. By the usual rule of readiness. */
export const deskRoutes: Routes = (server, world) => {
  server.get("/api/classes/:classId/desk", { config: { needs: "instructor" }, schema: asked }, (request) =>
    deskTable({ schoolId: askingInstructor(request).schoolId, ...request.params, ...request.query }, world),
  );
  server.get(
    "/api/classes/:classId/desk.csv",
    { config: { needs: "instructor" }, schema: asked },
    async (request, reply) => {
      const of = { schoolId: askingInstructor(request).schoolId, ...request.params, ...request.query };
      const table = await deskTable(of, world);
      return reply
        .header("Content-Type", "text/csv; charset=utf-8")
        .header("Content-Disposition", 'attachment; filename="class.csv"')
        .send(classCsv(table));
    },
  );
};
