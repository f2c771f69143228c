import { type Kysely, sql } from "kysely";
import type { Tables } from "../database/tables/tables";

/** A table as a backup holds it. */
export interface TableShape {
  readonly name: string;
  readonly columns: readonly string[];
  /** Columns of bytes, which a backup has as base64. */
  readonly bytes: readonly string[];
}

/** Tables after those that their rows name, so that rows can be put back in this order. */
function sorted(names: readonly string[], needs: ReadonlyMap<string, readonly string[]>): string[] {
  const done: string[] = [];
  const visit = (name: string) => {
    if (done.includes(name)) return;
    for (const needed of needs.get(name) ?? []) if (needed !== name) visit(needed);
    done.push(name);
  };
  for (const name of names) visit(name);
  return done;
}

/** Every table of the class server, whatever the version, as the database itself tells; those that others name first. */
export async function tablesInOrder(database: Kysely<Tables>): Promise<readonly TableShape[]> {
  const { rows: columns } = await sql<{ table: string; column: string; type: string }>`
    select table_name::text as table, column_name::text as column, data_type::text as type
    from information_schema.columns
    where table_schema = current_schema() and table_name not like 'kysely%' order by table_name, ordinal_position
  `.execute(database);
  const { rows: keys } = await sql<{ child: string; parent: string }>`
    select one.relname::text as child, other.relname::text as parent
    from pg_constraint join pg_class one on one.oid = conrelid join pg_class other on other.oid = confrelid
    where contype = 'f' order by 1, 2
  `.execute(database);
  const needs = new Map<string, string[]>();
  for (const { child, parent } of keys) needs.set(child, [...(needs.get(child) ?? []), parent]);
  const names = [...new Set(columns.map(({ table }) => table))];
  return sorted(names, needs).map((name) => {
    const own = columns.filter(({ table }) => table === name);
    const bytes = own.filter(({ type }) => type === "bytea").map(({ column }) => column);
    return { name, columns: own.map(({ column }) => column), bytes };
  });
}

/** Migrations that a database has gone through. */
export async function migrationsOf(database: Kysely<Tables>): Promise<readonly string[]> {
  const { rows } = await sql<{ name: string }>`select name from kysely_migration order by name`.execute(database);
  return rows.map(({ name }) => name);
}
