import { mkdtemp, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sittingShown } from "../../src/records/sitting/sittingShown";
import { checkReceipt } from "../../src/school/signing/checkReceipt";
import { PROVES_NOT } from "../../src/school/signing/receipt";
import { fingerprintsOf } from "../../src/school/signing/schoolKeys";
import { runCommand } from "../../src/server/backup/commands";
import { keyFolder } from "../../src/server/signing/keyFolder";
import { keptSitting } from "../support/keptRecord";
import { anAttempt } from "../support/logbookRecords";
import { satRecord, VERSION } from "../support/satRecord";
import { ENGINES, type TestDatabase } from "./support/engines";
import { type TestBench, testBench } from "./support/testBench";
import { type Browser, MORNING, type TestServer, testSchool, testServer } from "./support/testSchool";

describe.each(ENGINES)("signed records of a server on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Browser;
  let bench: TestBench;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = await testSchool(school, "Millbrook");
    bench = await testBench(school, head.schoolId);
    const [personId = ""] = bench.people;
    const record = { ...keptSitting("sat", satRecord()), personId };
    await bench.send([
      { kind: "sittings", record },
      { kind: "attempts", record: anAttempt("an-attempt", { personId }) },
    ]);
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const get = (url: string, { cookies }: Pick<Browser, "cookies"> = head) => school.server.inject({ url, cookies });
  const keys = async () => fingerprintsOf((await get("/api/school/keys")).json());

  test("a school has a key to print before anything was signed", async () => {
    const fresh = await testSchool(school, "Fresh");
    expect((await get("/api/school/keys", fresh)).json()).toMatchObject({
      school: { name: "Fresh" },
      keys: [{ fingerprint: expect.stringMatching(/^(\w{5}-){4}\w{5}$/), retiredAt: null }],
    });
    expect((await get("/api/school/keys", fresh)).json().keys).toHaveLength(1);
  });

  test("a signed record is the file of today with a receipt, and both check", async () => {
    const answer = await get("/api/records/sat/signed");
    const file = answer.json();
    expect(Object.keys(file)).toEqual(["sha256", "record", "receipt"]);
    expect(sittingShown(file, VERSION).check.problems).toEqual([]);
    const { isTrusted, statement } = checkReceipt(file.receipt, file.sha256, await keys());
    expect(isTrusted).toBe(true);
    expect(statement).toMatchObject({
      school: { id: head.schoolId, name: "Millbrook" },
      person: { id: bench.people[0], name: "Tavro" },
      record: { kind: "sittings", id: "sat", sha256: file.sha256 },
      receivedAt: new Date(school.world.now()).toISOString(),
      appVersion: VERSION,
      provesNot: PROVES_NOT,
    });
    const link = await database.query
      .selectFrom("chain")
      .select(["place", "sha256", "link"])
      .where("of_id", "=", "sat")
      .executeTakeFirst();
    expect(statement?.chain).toEqual(link);
    expect((await get("/api/records/sat/signed")).json()).toEqual(file);
  });

  test("who asks at once makes one key", async () => {
    const second = await testSchool(school, "Second");
    const other = await testBench(school, second.schoolId);
    await other.send([{ kind: "sittings", record: { ...keptSitting("other"), personId: other.people[0] } }]);
    await Promise.all(Array.from({ length: 5 }, () => get("/api/records/other/signed", second)));
    expect((await get("/api/school/keys", second)).json().keys).toHaveLength(1);
  });

  test("a new key takes the place of the old one, which stays for checking", async () => {
    const file = (await get("/api/records/sat/signed")).json();
    school.pass(1000);
    const rotated = await school.server.inject({ method: "POST", url: "/api/school/keys/rotate", ...head });
    expect(rotated.json().keys.map(({ retiredAt }: { retiredAt: number | null }) => retiredAt === null)).toEqual([
      false,
      true,
    ]);
    expect(checkReceipt(file.receipt, file.sha256, await keys()).isTrusted).toBe(true);
    const log = (await get("/api/audit")).json().entries;
    expect(log[0]).toMatchObject({ action: "keys.rotated", by: { name: expect.any(String) }, ofId: head.schoolId });
    const again = (await get("/api/records/sat/signed")).json();
    expect(again.receipt.publicKey).not.toBe(file.receipt.publicKey);
    expect(checkReceipt(again.receipt, again.sha256, await keys()).isTrusted).toBe(true);
  });

  test("a record of another school, another kind or none at all is not there", async () => {
    const third = await testSchool(school, "Third");
    for (const [url, asking] of [
      ["/api/records/sat/signed", third],
      ["/api/records/an-attempt/signed", head],
      ["/api/records/nowhere/signed", head],
      [`/api/records/${"x".repeat(1200)}/signed`, head],
    ] as const) {
      const answer = await get(url, asking);
      expect([answer.statusCode, answer.json().problem.code]).toEqual([404, "no-such-thing"]);
    }
  });

  test.each([
    { damage: "cut off", found: new Uint8Array() },
    { damage: "that of another key", found: new Uint8Array(32).fill(7) },
  ])("a key file that is $damage signs nothing: another key is made, and the check tells", async ({ found }) => {
    const other = await testServer(database, 8 + found.length);
    const read = async (url: string) => (await other.server.inject({ url, cookies: head.cookies })).json();
    await read("/api/records/sat/signed");
    const whole = other.world.keys.read;
    const [damaged = ""] = (await read("/api/school/keys")).keys
      .map((key: { fingerprint: string }) => key.fingerprint)
      .slice(-1);
    Object.assign(other.world.keys, { read: async (id: string) => (id === damaged ? found : whole(id)) });
    const { receipt, sha256 } = await read("/api/records/sat/signed");
    expect(checkReceipt(receipt, sha256, await keys()).isTrusted).toBe(true);
    const { isWell, lines } = await runCommand({ verb: "check" }, database, other.world.keys, MORNING);
    expect([isWell, lines.filter((line) => line.includes(damaged)).length]).toEqual([false, 1]);
    await other.server.close();
  });

  test("a bench gets no signed record, and no keys", async () => {
    expect((await get("/api/records/sat/signed", bench)).statusCode).toBe(401);
    expect((await get("/api/school/keys", bench)).statusCode).toBe(401);
  });
});

test("a private key lies in a file that its owner alone may read, and is never written over", async () => {
  const data = await mkdtemp(join(tmpdir(), "gatefall-keys-"));
  const keys = keyFolder(data);
  expect(await keys.read("AAAAA")).toBeNull();
  await keys.write("AAAAA", new Uint8Array([1, 2, 255]));
  expect(await keys.read("AAAAA")).toEqual(new Uint8Array([1, 2, 255]));
  expect((await stat(join(data, "keys/AAAAA.key"))).mode & 0o777).toBe(0o600);
  expect((await stat(join(data, "keys"))).mode & 0o777).toBe(0o700);
  await expect(keys.write("AAAAA", new Uint8Array([3]))).rejects.toThrow();
  await rm(data, { recursive: true });
});
