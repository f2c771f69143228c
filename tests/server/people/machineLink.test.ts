import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { newPassword, newSchool } from "../../../src/server/start/machineLinks";
import { readOptions } from "../../../src/server/start/options";
import { type Asking, asking, outcome } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { browserOf, type TestServer, testSchool, testServer } from "../support/testSchool";

test("the command names who is to have a new password, and nothing else", () => {
  expect(readOptions(["new-password", "orla"], {})).toMatchObject({
    kind: "command",
    command: { verb: "new-password", login: "orla" },
  });
  for (const line of [["new-password"], ["new-password", "orla", "bram"]]) {
    expect(() => readOptions(line, {})).toThrow("new-password NAME");
  }
});

describe.each(ENGINES)("a head's lost password on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  test("is set anew by a link that the machine prints, once", async () => {
    const { lines, isWell } = await newPassword(" Hill ", school.world);
    expect(isWell).toBe(true);
    const token = /token=([\w-]{43})$/.exec(lines[1] ?? "")?.[1];
    const anyone = asking(school);
    expect(outcome(await anyone.post("/api/password", { token, password: "quite another one" }))).toBe("200");
    expect(outcome(await anyone.post("/api/password", { token, password: "a third one of them" }))).toMatch(
      /link-not-valid$/,
    );
    expect(outcome(await head.get("/api/me"))).toBe("401 not-signed-in");
    const signIn = (password: string) => anyone.post("/api/sign-in", { login: "hill", password });
    expect(outcome(await signIn("a long password"))).not.toBe("200");
    expect(outcome(await signIn("quite another one"))).toBe("200");
    const rows = await database.query.selectFrom("audit").select(["by_id", "action"]).execute();
    expect(rows).toContainEqual({ by_id: "machine", action: "instructor.password-link" });
  });

  test("is nobody's who does not sign in there", async () => {
    await expect(newPassword("nobody", school.world)).rejects.toMatchObject({ code: "no-such-login" });
  });
});

describe.each(ENGINES)("one more school in a database on $engine", ({ open }) => {
  test("is set up by a link that the machine prints, once, and knows nothing of the first", async () => {
    const database = await open();
    const first = await testServer(database);
    const head = asking(first, await testSchool(first, "hill"));
    expect(outcome(await head.post("/api/classes", { name: "Fitters 1" }))).toBe("200");
    const { lines, isWell } = await newSchool(first.world);
    expect(isWell).toBe(true);
    const token = /^#\/instructor\/first\?token=([\w-]{43})$/.exec(lines[1] ?? "")?.[1];
    const account = { token, school: "Vale", name: "Bram", login: "vale", password: "a long password" };
    const anyone = asking(first);
    const made = await anyone.post("/api/schools", account);
    expect(outcome(made)).toBe("200");
    expect(outcome(await anyone.post("/api/schools", { ...account, login: "dale" }))).toMatch(/link-not-valid$/);
    const other = asking(first, browserOf(made));
    expect((await other.get("/api/classes")).json().classes).toEqual([]);
    expect((await head.get("/api/classes")).json().classes).toHaveLength(1);
    await first.server.close();
    await database.remove();
  });
});
