import type * as z from "zod/mini";
import { AUDIT_PAGE, auditLog, auditQuery } from "../../school/wire/auditWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { type AskingInstructor, askingInstructor } from "../http/whoAsks";
import type { World } from "../world/world";

/** What instructors of a school changed, the latest first. @param before - id of an entry: only those before it */
async function auditOf(
  { schoolId }: AskingInstructor,
  before: number,
  { database }: World,
): Promise<z.infer<typeof auditLog>> {
  const found = await database
    .selectFrom("audit")
    .leftJoin("instructors", "instructors.id", "by_id")
    .select(["audit.id", "at", "by_id", "instructors.name", "action", "of_id", "details"])
    .where("audit.school_id", "=", schoolId)
    .where("audit.id", "<", before)
    .orderBy("audit.id", "desc")
    .limit(AUDIT_PAGE + 1)
    .execute();
  return {
    entries: found.slice(0, AUDIT_PAGE).map(({ id, at, by_id, name, action, of_id, details }) => ({
      id,
      at,
      by: { id: by_id, name: name ?? "" },
      action,
      ofId: of_id,
      details: JSON.parse(details),
    })),
    isMore: found.length > AUDIT_PAGE,
  };
}

/** The log of what instructors changed, for the head. */
export const auditRoutes: Routes = (server, world) => {
  server.get(
    "/api/audit",
    { config: { needs: "head" }, schema: { querystring: auditQuery, response: { 200: auditLog, ...refusals } } },
    (request) => auditOf(askingInstructor(request), Number(request.query.before ?? Number.MAX_SAFE_INTEGER), world),
  );
};
