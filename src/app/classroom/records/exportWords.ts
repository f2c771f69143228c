import type { ExportForm } from "../../../school/wire/recordsWire";

/** A form of an export in words: its button, and what one does with it. */
export interface ExportWords {
  readonly label: string;
  readonly says: string;
}

/** Every form in which the server hands out records. */
export const EXPORT_WORDS: Readonly<Record<ExportForm, ExportWords>> = {
  logbook: { label: "Logbook file", says: "everything, with motions; any bench or class desk of files opens it" },
  attempts: { label: "Attempts as CSV", says: "one attempt a row" },
  zeroings: { label: "Zeroings as CSV", says: "one zeroing a row" },
  jobs: { label: "Jobs as CSV", says: "one job a row" },
  sittings: { label: "Sittings as CSV", says: "one sitting a row, from its checked record" },
  xapi: { label: "xAPI statements", says: "JSON for a learning record store" },
};

/** The table of the class desk, as the server counts it when it is asked. */
export const TABLE_WORDS: ExportWords = {
  label: "Class table as CSV",
  says: "people by skills as the server counts them now, with every skill",
};
