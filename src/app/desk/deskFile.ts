import type { ExportFile } from "../logbook/exportFiles";

/**
 * A CSV file of the desk.
 *
 * @param now - milliseconds since 1970
 */
export function deskFile(what: "class" | "gauge", text: string, now: number): Omit<ExportFile, "told"> {
  return { name: `gatefall-${what}-${new Date(now).toISOString().slice(0, 10)}.csv`, type: "text/csv", text };
}
