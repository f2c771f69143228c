import type { FastifyReply } from "fastify";
import * as z from "zod/mini";
import { oneOf, strict } from "../../lock/fieldSchemas";
import { id } from "../../records/fields";
import { SchoolError } from "../../school/schoolError";
import { schoolProblem } from "../../school/schoolWords";
import {
  deletionsReceipt,
  EXPORT_FORMS,
  editsReceipt,
  erasedReceipt,
  PART_LIMITS,
  recordDeletions,
  recordEdits,
  recordsPart,
  recordsReceipt,
} from "../../school/wire/recordsWire";
import { mergeAsked, mergedReceipt } from "../../school/wire/rosterWire";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { unpacksBody } from "../http/unpackedBody";
import { askingBench, askingInstructor } from "../http/whoAsks";
import { foundClass, peopleIn } from "../people/found";
import { deleteAsInstructor, deleteAtBench } from "./deletions";
import { takeEdits } from "./edits";
import { erasePerson } from "./erasing";
import { type ExportedFile, exported } from "./exports";
import { mergePeopleOf } from "./mergePeople";
import { receiveRecords } from "./receive";

const bodyLimit = PART_LIMITS.bytes;
const preParsing = unpacksBody(PART_LIMITS.bytes);

/** How the records of benches come in, and are changed and deleted from there. */
const benchRoutes: Routes = (server, world) => {
  server.post(
    "/api/bench/records",
    {
      config: { needs: "bench" },
      bodyLimit,
      preParsing,
      schema: { body: recordsPart, response: { 200: recordsReceipt, ...refusals } },
    },
    (request) => receiveRecords(request.body, askingBench(request), world),
  );
  server.post(
    "/api/bench/edits",
    {
      config: { needs: "bench" },
      bodyLimit,
      preParsing,
      schema: { body: recordEdits, response: { 200: editsReceipt, ...refusals } },
    },
    (request) => takeEdits(request.body, askingBench(request), world),
  );
  server.post(
    "/api/bench/deletions",
    { config: { needs: "bench" }, schema: { body: recordDeletions, response: { 200: deletionsReceipt, ...refusals } } },
    (request) => deleteAtBench(request.body.records, askingBench(request), world),
  );
};

const wanted = strict({ id, form: oneOf(EXPORT_FORMS) });

function handOut(reply: FastifyReply, { type, name, text }: ExportedFile): string {
  reply.header("Content-Type", type).header("Content-Disposition", `attachment; filename="${name}"`);
  return text;
}

/** Records that instructors delete or take out, and people who are erased. */
const instructorRoutes: Routes = (server, world) => {
  server.post(
    "/api/records/deletions",
    {
      config: { needs: "instructor" },
      schema: { body: recordDeletions, response: { 200: deletionsReceipt, ...refusals } },
    },
    (request) => deleteAsInstructor(request.body.records, askingInstructor(request), world),
  );
  server.post(
    "/api/people/:id/merge",
    {
      config: { needs: "instructor" },
      schema: { params: strict({ id }), body: mergeAsked, response: { 200: mergedReceipt, ...refusals } },
    },
    (request) => mergePeopleOf(request.params.id, request.body.into, askingInstructor(request), world),
  );
  server.post(
    "/api/people/:id/erase",
    { config: { needs: "head" }, schema: { params: strict({ id }), response: { 200: erasedReceipt, ...refusals } } },
    (request) => erasePerson(request.params.id, askingInstructor(request), world),
  );
  server.get(
    "/api/people/:id/export/:form",
    { config: { needs: "instructor" }, schema: { params: wanted, response: { 200: z.string(), ...refusals } } },
    async (request, reply) => {
      const { schoolId } = askingInstructor(request);
      const { id: personId, form } = request.params;
      const person = await world.database
        .selectFrom("people")
        .select("id")
        .where("school_id", "=", schoolId)
        .where("id", "=", personId)
        .where("erased_at", "is", null)
        .where("merged_into", "is", null)
        .executeTakeFirst();
      if (person === undefined) throw new SchoolError(schoolProblem("no-such-thing", []));
      return handOut(reply, await exported({ schoolId, personIds: [personId] }, form, world));
    },
  );
  server.get(
    "/api/classes/:id/export/:form",
    { config: { needs: "instructor" }, schema: { params: wanted, response: { 200: z.string(), ...refusals } } },
    async (request, reply) => {
      const { schoolId } = askingInstructor(request);
      const ofClass = { schoolId, classId: request.params.id };
      await foundClass(world.database, ofClass);
      const people = await peopleIn(world.database, ofClass);
      const whose = { schoolId, personIds: people.map((person) => person.id) };
      return handOut(reply, await exported(whose, request.params.form, world));
    },
  );
};

/** Everything that is done with records. */
export const recordRoutes: Routes = (server, world) => {
  benchRoutes(server, world);
  instructorRoutes(server, world);
};
