import type { PGlite } from "@electric-sql/pglite";
import { expect, test, vi } from "vitest";
import { EmbeddedPool } from "../../src/server/database/embedded";
import { roomLeft } from "../../src/server/database/roomLeft";

const noRoom = () => Object.assign(new Error("no space left on device"), { code: "53100" });

const hasRoom = async () => true;
const MB = 2 ** 20;

/** A database that answers, until it meets a statement which fails so. */
function database(name: string, fails: Readonly<Record<string, Error>> = {}) {
  const asked: string[] = [];
  const one = {
    asked,
    query: async (text: string) => {
      asked.push(text);
      const error = fails[text];
      if (error !== undefined) throw error;
      return { rows: [{ name }], affectedRows: 1 };
    },
    close: async () => undefined,
  };
  return one as typeof one & PGlite;
}

test("a database without room is asked nothing more, not even to roll back, and opened anew", async () => {
  const full = database("full", { insert: noRoom() });
  const next = database("next");
  const open = vi.fn(async () => next);
  const pool = new EmbeddedPool(full, { open, hasRoom });
  const client = await pool.connect();
  await client.query("begin", []);
  await expect(client.query("insert", [])).rejects.toMatchObject({ code: "53100" });
  await expect(client.query("rollback", [])).rejects.toMatchObject({ code: "53100" });
  client.release();
  expect(full.asked).toEqual(["begin", "insert"]);
  const again = await pool.connect();
  expect((await again.query<{ name: string }>("select", [])).rows).toEqual([{ name: "next" }]);
  again.release();
  expect(open).toHaveBeenCalledTimes(1);
});

test("while it cannot be opened either, everybody is told so, and it is not tried each time", async () => {
  const open = vi.fn(async () => {
    throw new Error("failed to initialize");
  });
  const pool = new EmbeddedPool(database("full", { insert: noRoom() }), { open, hasRoom });
  const client = await pool.connect();
  await expect(client.query("insert", [])).rejects.toMatchObject({ code: "53100" });
  client.release();
  for (let k = 0; k < 5; k++) await expect(pool.connect()).rejects.toMatchObject({ code: "53100" });
  expect(open).toHaveBeenCalledTimes(1);
});

test("any other failure ends no database", async () => {
  const one = database("one", { wrong: Object.assign(new Error("syntax"), { code: "42601" }) });
  const pool = new EmbeddedPool(one, { open: () => Promise.reject(new Error("not to be opened")), hasRoom });
  const client = await pool.connect();
  await expect(client.query("wrong", [])).rejects.toMatchObject({ code: "42601" });
  await client.query("rollback", []);
  client.release();
  await (await pool.connect()).query("select", []);
  expect(one.asked).toEqual(["wrong", "rollback", "select"]);
});

test("while the disk is nearly full nothing is written, and all that is there can be read", async () => {
  const one = database("one");
  const open = () => Promise.reject(new Error("not to be opened"));
  let free = 47 * MB;
  const pool = new EmbeddedPool(one, { open, hasRoom: async () => free >= 48 * MB });
  const client = await pool.connect();
  for (const text of ["begin", "select 1", "SELECT 2", "rollback"]) await client.query(text, []);
  for (const text of ["insert into a", "update a", "delete from a", "with b as (insert into a) select 1"]) {
    await expect(client.query(text, [])).rejects.toMatchObject({ problem: { code: "try-again" } });
  }
  expect(one.asked).toEqual(["begin", "select 1", "SELECT 2", "rollback"]);
  free = 48 * MB;
  await client.query("insert into a", []);
  expect(one.asked.at(-1)).toBe("insert into a");
});

test.each([
  { free: async () => 48 * MB, has: true },
  { free: async () => 48 * MB - 1, has: false },
  { free: () => Promise.reject(new Error("no such call")), has: true },
])("room is told by what is free on the disk: $has", async ({ free, has }) => {
  expect(await roomLeft("/anywhere", free)()).toBe(has);
});
