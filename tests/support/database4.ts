import { fromBase64 } from "../../src/records/motion/base64";
import written from "../fixtures/0.2.0/database-4.json" with { type: "json" };

/** Tables and indexes of version 4, as the browser has them. */
export const TABLES_4 = {
  people: [],
  attempts: [
    "personId",
    ["personId", "startedAt", "id"],
    ["personId", "profileId", "startedAt", "id"],
    ["personId", "missed", "startedAt", "id"],
    ["personId", "settingsKey"],
    "*tagKeys",
  ],
  traces: [],
  zeroings: ["personId", ["personId", "startedAt", "id"]],
  jobs: ["personId", ["personId", "startedAt", "id"]],
  sittings: ["personId", ["personId", "startedAt", "id"], "state"],
  sheets: [],
  settings: ["personId"],
  declarations: ["personId"],
};

/** Rows of a database of version 4, as version 0.2.0 left them. */
export function rows4() {
  const { rows } = written;
  return { ...rows, traces: rows.traces.map(({ id, bytes }) => ({ id, bytes: fromBase64(bytes.bytes) })) };
}
