import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inviteFirst } from "../../src/server/people/links";
import { ENGINES, type TestDatabase } from "./support/engines";
import { browserOf, type TestServer, testSchool, testServer } from "./support/testSchool";

const DAY_MS = 24 * 3600 * 1000;

describe.each(ENGINES)("on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const post = (url: string, payload: object, headers: Record<string, string> = {}) =>
    school.server.inject({ method: "POST", url, payload, headers });
  const me = (cookies: Record<string, string>) => school.server.inject({ url: "/api/me", cookies });

  test("the first link makes a school and signs its head in, once", async () => {
    const token = await inviteFirst(school.world);
    const asked = { token, school: "Millbrook", name: "Ada", login: "Ada ", password: "a long password" };
    const made = await post("/api/schools", asked);
    expect(made.statusCode).toBe(200);
    expect(made.json()).toMatchObject({ school: { name: "Millbrook" }, instructor: { name: "Ada", role: "head" } });
    expect((await me(browserOf(made).cookies)).json()).toEqual(made.json());
    const again = await post("/api/schools", { ...asked, login: "other" });
    expect([again.statusCode, again.json().problem.code]).toEqual([410, "link-not-valid"]);
  });

  test("a link that expired makes nothing, and a refused one stays good", async () => {
    const taken = await testSchool(school, "taken");
    expect(taken.schoolId).not.toBe("");
    const token = await inviteFirst(school.world);
    const asked = { token, school: "Second", name: "Bo", login: "TAKEN", password: "a long password" };
    expect((await post("/api/schools", asked)).json().problem.code).toBe("login-taken");
    expect((await post("/api/schools", { ...asked, login: "free" })).statusCode).toBe(200);
    const late = await inviteFirst(school.world);
    school.pass(DAY_MS + 1);
    expect((await post("/api/schools", { ...asked, token: late })).json().problem.code).toBe("link-not-valid");
  });

  test.each([
    { sent: { login: "hill", password: "a wrong password" }, why: "a wrong password" },
    { sent: { login: "nobody", password: "a long password" }, why: "a name that nobody has" },
  ])("$why signs nobody in, in the same words", async ({ sent }) => {
    await testSchool(school, "hill").catch(() => undefined);
    const answer = await post("/api/sign-in", sent);
    expect([answer.statusCode, answer.json()]).toEqual([
      401,
      { problem: { code: "wrong-sign-in", path: [], values: {} } },
    ]);
    expect(answer.cookies).toEqual([]);
  });

  test("a sign-in ends with the day, and when it is ended", async () => {
    await testSchool(school, "dale");
    const again = browserOf(await post("/api/sign-in", { login: " Dale", password: "a long password" }));
    expect((await me(again.cookies)).statusCode).toBe(200);
    const out = await school.server.inject({ method: "POST", url: "/api/sign-out", ...again });
    expect(out.statusCode).toBe(204);
    expect((await me(again.cookies)).statusCode).toBe(401);
    const next = browserOf(await post("/api/sign-in", { login: "dale", password: "a long password" }));
    school.pass(DAY_MS / 2 + 1);
    expect((await me(next.cookies)).statusCode).toBe(401);
  });

  test.each([
    { why: "without its token", headers: {} },
    { why: "with another token", headers: { "x-csrf": "x" } },
    { why: "from another page", headers: { origin: "http://elsewhere.test" } },
    { why: "that the browser says came from elsewhere", headers: { "sec-fetch-site": "cross-site" } },
  ])("a change $why is refused", async ({ headers }) => {
    const name = `w${Object.values(headers).join("").length}${Object.keys(headers).join("").length}`;
    const { cookies, headers: own } = await testSchool(school, name);
    const isToken = "x-csrf" in headers || Object.keys(headers).length === 0;
    const sent = isToken ? headers : { ...own, ...headers };
    const answer = await school.server.inject({
      method: "POST",
      url: "/api/sign-out",
      cookies,
      headers: sent as Record<string, string>,
    });
    expect([answer.statusCode, answer.json().problem.code]).toEqual([403, "from-elsewhere"]);
    expect((await me(cookies)).statusCode).toBe(200);
  });

  test("what is sent is checked field by field", async () => {
    const answer = await post("/api/sign-in", { login: "x", password: "" });
    expect(answer.statusCode).toBe(400);
    expect(answer.json().problem).toMatchObject({ code: "text", path: ["login"] });
  });

  test("a password that cannot be one is told without being sent back", async () => {
    const asked = { token: "x".repeat(43), school: "School", name: "Cleo", login: "cleo", password: "hush" };
    const answer = await post("/api/schools", asked);
    expect(answer.json().problem).toMatchObject({ code: "text", path: ["password"] });
    expect(answer.body).not.toContain("hush");
  });

  test("an address that is none is told as data", async () => {
    const answer = await school.server.inject("/api/nowhere");
    expect([answer.statusCode, answer.json().problem.code]).toEqual([404, "no-such-thing"]);
    expect(answer.headers["content-security-policy"]).toContain("frame-ancestors 'none'");
  });
});
