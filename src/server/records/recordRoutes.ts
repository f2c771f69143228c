import { problemAnswer } from "../../school/wire/problemWire";
import { PART_LIMITS, recordsPart, recordsReceipt } from "../../school/wire/recordsWire";
import type { Routes } from "../http/routes";
import { unpacksBody } from "../http/unpackedBody";
import { askingBench } from "../http/whoAsks";
import { receiveRecords } from "./receive";

const refusals = { "4xx": problemAnswer, "5xx": problemAnswer } as const;

/** How the records of benches come in. */
export const recordRoutes: Routes = (server, world) => {
  server.post(
    "/api/bench/records",
    {
      config: { needs: "bench" },
      bodyLimit: PART_LIMITS.bytes,
      preParsing: unpacksBody(PART_LIMITS.bytes),
      schema: { body: recordsPart, response: { 200: recordsReceipt, ...refusals } },
    },
    (request) => receiveRecords(request.body, askingBench(request), world),
  );
};
