import * as z from "zod/mini";
import { strict } from "../../lock/fieldSchemas";
import { id } from "../../records/fields";
import { receiptSchema } from "../../school/signing/receipt";
import { schoolKeysSchema } from "../../school/signing/schoolKeys";
import { refusals } from "../http/refusals";
import type { Routes } from "../http/routes";
import { askingInstructor } from "../http/whoAsks";
import { keysOf, rotateKeys } from "./schoolKeys";
import { signedRecord } from "./signedRecord";

const signedFile = z.object({ sha256: z.string(), record: z.unknown(), receipt: receiptSchema });

/** Signed records, and the keys that they are signed with. */
export const signingRoutes: Routes = (server, world) => {
  server.get(
    "/api/records/:id/signed",
    {
      config: { needs: "instructor" },
      schema: { params: strict({ id }), response: { 200: signedFile, ...refusals } },
    },
    (request) => signedRecord(askingInstructor(request).schoolId, request.params.id, world),
  );
  server.get(
    "/api/school/keys",
    { config: { needs: "instructor" }, schema: { response: { 200: schoolKeysSchema, ...refusals } } },
    (request) => keysOf(askingInstructor(request), world),
  );
  server.post(
    "/api/school/keys/rotate",
    { config: { needs: "head" }, schema: { response: { 200: schoolKeysSchema, ...refusals } } },
    (request) => rotateKeys(askingInstructor(request), world),
  );
};
