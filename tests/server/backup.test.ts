import { mkdtemp, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { sql } from "kysely";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { canonicalJson } from "../../src/drill/canonicalJson";
import { toBase64 } from "../../src/records/motion/base64";
import { checkSchools } from "../../src/server/backup/checkDatabase";
import { checkText, runCommand } from "../../src/server/backup/commands";
import { tablesInOrder } from "../../src/server/backup/tablesInOrder";
import { keptSitting } from "../support/keptRecord";
import { anAttempt, SHORT_TRACE } from "../support/logbookRecords";
import { ENGINES, type TestDatabase } from "./support/engines";
import { testBench } from "./support/testBench";
import { MORNING, type TestServer, testSchool, testServer } from "./support/testSchool";

/** Two schools with records, motions and a key. */
async function filled(database: TestDatabase): Promise<TestServer> {
  const school = await testServer(database);
  for (const name of ["Millbrook", "Second"]) {
    const head = await testSchool(school, name);
    const bench = await testBench(school, head.schoolId, ["Tavro", "Mibsy"]);
    const [personId = "", other = ""] = bench.people;
    await bench.send([
      ...Array.from({ length: 30 }, (_, k) => ({
        kind: "attempts",
        record: anAttempt(`attempt-${k}`, { personId: k % 2 ? personId : other, note: "\u0000 \ud800 'é'" }),
        motion: toBase64(SHORT_TRACE),
      })),
      { kind: "sittings", record: { ...keptSitting("sat"), personId } },
    ]);
    await school.server.inject({ url: "/api/records/sat/signed", cookies: head.cookies });
  }
  return school;
}

/** A row with its bytes as text. */
const plain = (row: object) =>
  Object.fromEntries(
    Object.entries(row).map(([column, value]) => [column, value instanceof Uint8Array ? toBase64(value) : value]),
  );

/** Every row of every table. */
async function everything({ query }: TestDatabase): Promise<Record<string, unknown[]>> {
  const all: Record<string, unknown[]> = {};
  for (const { name } of await tablesInOrder(query)) {
    const { rows } = await sql<object>`select * from ${sql.table(name)}`.execute(query);
    all[name] = rows.map((row) => canonicalJson(plain(row))).toSorted();
  }
  return all;
}

describe.each(ENGINES)("the data of a server on $engine", ({ open }) => {
  let folder = "";
  let database: TestDatabase;
  let school: TestServer;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "gatefall-backup-"));
    database = await open();
    school = await filled(database);
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
    await rm(folder, { recursive: true, force: true });
  });

  const checked = () => runCommand({ verb: "check" }, database, school.world.keys, MORNING);

  test("is sound as it is", async () => {
    expect(await checked()).toEqual({
      isWell: true,
      lines: [
        "Millbrook: 31 records, 0 deleted, 32 links, 1 key: sound",
        "Second: 31 records, 0 deleted, 32 links, 1 key: sound",
      ],
    });
  });

  test("comes back whole from a backup, on either database, and only into an empty one", async () => {
    const file = join(folder, "a.backup");
    const made = await runCommand({ verb: "backup", file }, database, school.world.keys, MORNING);
    expect(made.lines[0]).toBe(`${file}: 2 schools, 4 people, 62 records.`);
    const refused = runCommand({ verb: "restore", file }, database, school.world.keys, MORNING);
    await expect(refused).rejects.toMatchObject({ code: "database-not-empty" });
    for (const other of ENGINES) {
      const empty = await other.open();
      await runCommand({ verb: "restore", file }, empty, school.world.keys, MORNING);
      expect(await everything(empty)).toEqual(await everything(database));
      expect((await runCommand({ verb: "check" }, empty, school.world.keys, MORNING)).isWell).toBe(true);
      await sql`insert into audit (school_id, at, by_id, action, of_id, details) select id, 1, '', '', '', '' from schools`.execute(
        empty.query,
      );
      await empty.remove();
    }
  });

  const damages: readonly { why: string; code: string; damage: (text: string) => string }[] = [
    { why: "cut off", code: "backup-damaged", damage: (text) => text.slice(0, text.length / 2) },
    { why: "changed", code: "backup-damaged", damage: (text) => text.replace("Millbrook", "Millbrock") },
    { why: "without a row", code: "backup-damaged", damage: (text) => text.replace(/\n\[[^\n]*attempt-7[^\n]*/, "") },
    { why: "longer than it was", code: "backup-damaged", damage: (text) => `${text}["x"]\n` },
    { why: "of another format", code: "backup-damaged", damage: (text) => text.replace("gatefall-class", "other") },
    {
      why: "of other tables",
      code: "backup-of-other-version",
      damage: (text) => text.replace('"motion"', '"motions"'),
    },
  ];

  test("a damaged backup changes nothing", async () => {
    const file = join(folder, "whole.backup");
    await runCommand({ verb: "backup", file }, database, school.world.keys, MORNING);
    const text = gunzipSync(await readFile(file)).toString();
    const empty = await open();
    const before = await everything(empty);
    for (const { why, code, damage } of damages) {
      const damagedFile = join(folder, "damaged.backup");
      await writeFile(damagedFile, gzipSync(damage(text)));
      const restored = runCommand({ verb: "restore", file: damagedFile }, empty, school.world.keys, MORNING);
      await expect(restored, why).rejects.toMatchObject({ code });
      expect(await everything(empty), why).toEqual(before);
    }
    const packed = gzipSync(text);
    for (let place = 20; place < packed.length; place += Math.ceil(packed.length / 8)) {
      const other = Buffer.from(packed);
      other.writeUInt8(other.readUInt8(place) ^ 0x55, place);
      await writeFile(file, other);
      const restored = runCommand({ verb: "restore", file }, empty, school.world.keys, MORNING);
      await expect(restored, `byte ${place}`).rejects.toMatchObject({ code: "backup-damaged" });
    }
    expect(await everything(empty)).toEqual(before);
    await writeFile(file, packed.subarray(0, -20));
    const cut = runCommand({ verb: "restore", file }, empty, school.world.keys, MORNING);
    await expect(cut).rejects.toMatchObject({ code: "backup-damaged" });
    await empty.remove();
  });

  test.each([
    {
      why: "a record that was changed",
      by: "update records set body = replace(body, 'open', 'opem') where id = 'attempt-3'",
      says: "record attempt-3 is not what was received (place 4 of the chain)",
    },
    {
      why: "a motion that was changed",
      by: "update records set motion = '\\x00' where id = 'attempt-3'",
      says: "record attempt-3 is not what was received (place 4 of the chain)",
    },
    {
      why: "a record that is gone",
      by: "delete from records where id = 'attempt-3'",
      says: "record attempt-3 is gone, and nobody deleted it (place 4 of the chain)",
    },
    {
      why: "a record that nobody received",
      by: "update records set place = 400 where id = 'attempt-3'",
      says: "record attempt-3 is not in the chain",
    },
    {
      why: "a link that was changed",
      by: "update chain set at = at + 1 where of_id = 'attempt-3'",
      says: "the chain was changed at place 4",
    },
    {
      why: "a link that is gone",
      by: "delete from chain where of_id = 'attempt-3'",
      says: "place 4 of the chain is missing or comes twice",
    },
    {
      why: "another key",
      by: "update signing_keys set public_key = repeat('0', 64)",
      says: "is not the one that it was made as",
    },
  ])("$why is found", async ({ by, says }) => {
    const undo = new Error("undo");
    await expect(
      database.query.transaction().execute(async (held) => {
        await sql.raw(by).execute(held);
        const checks = await checkSchools(held, school.world.keys);
        expect(checks.flatMap(checkText).join("\n")).toContain(says);
        throw undo;
      }),
    ).rejects.toBe(undo);
    expect((await checked()).isWell).toBe(true);
  });
});
