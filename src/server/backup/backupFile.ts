import * as z from "zod/mini";

/** First line of a backup. */
export const backupHead = z.object({
  format: z.literal("gatefall-class-backup"),
  version: z.literal(1),
  /** When it was made, milliseconds since 1970. */
  at: z.number(),
  migrations: z.array(z.string()),
  tables: z.array(z.object({ name: z.string(), columns: z.array(z.string()), bytes: z.array(z.string()) })),
});

/** Before the rows of a table. */
export const tableLine = z.object({ table: z.string() });

/** A row: its values in the order of the columns. */
export const rowLine = z.array(z.unknown());

/** Last line: how many rows each table has, and the SHA-256 of every line before. */
export const backupEnd = z.object({ rows: z.record(z.string(), z.number()), sha256: z.string() });
