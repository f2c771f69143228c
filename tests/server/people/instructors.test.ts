import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Asking, asking, outcome } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { browserOf, type TestServer, testSchool, testServer } from "../support/testSchool";

const DAY_MS = 24 * 3600 * 1000;
const PASSWORD = "a long password";

describe.each(ENGINES)("on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  let anyone: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
    anyone = asking(school);
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const invited = async (role = "instructor") => (await head.post("/api/links", { role })).json();
  const signUp = (token: string, login: string) =>
    anyone.post("/api/instructors", { token, name: login, login, password: PASSWORD });
  const signIn = (login: string, password = PASSWORD) => anyone.post("/api/sign-in", { login, password });
  const me = async (login: string) => {
    const { instructors } = (await head.get("/api/instructors")).json();
    return instructors.find((one: { login: string }) => one.login === login);
  };

  test("the head invites an instructor, once, and sees links until they are used", async () => {
    const { id, token, expiresAt } = await invited();
    expect(expiresAt).toBe(school.world.now() + DAY_MS);
    expect((await head.get("/api/links")).json().links).toMatchObject([{ id, role: "instructor", instructor: null }]);
    const made = await signUp(token, "ann");
    expect(made.json()).toMatchObject({ school: { name: "hill" }, instructor: { name: "ann", role: "instructor" } });
    expect(outcome(await asking(school, browserOf(made)).get("/api/classes"))).toBe("200");
    expect(outcome(await signUp(token, "another"))).toBe("410 link-not-valid");
    expect((await head.get("/api/links")).json().links).toEqual([]);
    const stored = JSON.stringify(await database.query.selectFrom("invitations").selectAll().execute());
    expect(stored).not.toContain(token);
  });

  test("links that do not do are answered alike", async () => {
    const [late, revoked, forPassword] = [await invited(), await invited(), await invited()];
    expect(outcome(await head.post(`/api/links/${revoked.id}/revoke`))).toBe("204");
    school.pass(1);
    await database.query.updateTable("invitations").set({ expires_at: 0 }).where("id", "=", late.id).execute();
    const wrong = [late.token, revoked.token, "x".repeat(43)];
    const answers = await Promise.all(wrong.map((token) => signUp(token, "bea")));
    const asPassword = await anyone.post("/api/password", { token: forPassword.token, password: PASSWORD });
    expect(new Set([...answers, asPassword].map(({ statusCode, body }) => `${statusCode} ${body}`)).size).toBe(1);
    expect(outcome(asPassword)).toBe("410 link-not-valid");
    expect(outcome(await signUp(forPassword.token, "bea"))).toBe("200");
  });

  test("of two who use one link at once, one does", async () => {
    const { token } = await invited();
    const both = await Promise.all(["cal", "cam"].map((login) => signUp(token, login)));
    expect(both.map(outcome).toSorted()).toEqual(["200", "410 link-not-valid"]);
  });

  test("an instructor who is disabled is out at once, and comes back", async () => {
    const made = await signUp((await invited()).token, "dan");
    const dan = asking(school, browserOf(made));
    const { id } = await me("dan");
    expect(outcome(await head.post(`/api/instructors/${id}/disable`))).toBe("204");
    expect(outcome(await dan.get("/api/me"))).toBe("401 not-signed-in");
    expect(outcome(await signIn("dan"))).toBe("401 wrong-sign-in");
    expect((await me("dan")).disabledAt).toBe(school.world.now());
    expect(outcome(await head.post(`/api/instructors/${id}/enable`))).toBe("204");
    expect(outcome(await signIn("dan"))).toBe("200");
  });

  test("a school always has a head", async () => {
    const { id } = await me("hill");
    expect(outcome(await head.post(`/api/instructors/${id}/disable`))).toBe("409 last-head");
    const made = await signUp((await invited("head")).token, "eve");
    const eve = asking(school, browserOf(made));
    const other = await me("eve");
    const both = await Promise.all([
      head.post(`/api/instructors/${other.id}/disable`),
      eve.post(`/api/instructors/${id}/disable`),
    ]);
    expect(both.map(outcome).filter((one) => one === "204")).toHaveLength(1);
    // Whichever of the two it was: the first head goes on in the other tests.
    await database.query.updateTable("instructors").set({ disabled_at: null }).where("id", "=", id).execute();
    head = asking(school, browserOf(await signIn("hill")));
  });

  test("a password is changed by who knows it, and other browsers are signed out", async () => {
    const made = await signUp((await invited()).token, "fay");
    const [here, there] = [asking(school, browserOf(made)), asking(school, browserOf(await signIn("fay")))];
    const change = (password: string) => here.post("/api/me/password", { password, next: "another password" });
    expect(outcome(await change("a wrong password"))).toBe("403 wrong-password");
    expect(outcome(await there.get("/api/me"))).toBe("200");
    expect(outcome(await change(PASSWORD))).toBe("204");
    expect([await here.get("/api/me"), await there.get("/api/me")].map(outcome)).toEqual(["200", "401 not-signed-in"]);
    expect([await signIn("fay"), await signIn("fay", "another password")].map(outcome)).toEqual([
      "401 wrong-sign-in",
      "200",
    ]);
  });

  test("who forgot their password sets another by a link of the head, once", async () => {
    await signUp((await invited()).token, "gus");
    const { id } = await me("gus");
    const { token } = (await head.post(`/api/instructors/${id}/password-link`)).json();
    expect((await head.get("/api/links")).json().links[0]).toMatchObject({ instructor: { id, name: "gus" } });
    const set = () => anyone.post("/api/password", { token, password: "another password" });
    expect(outcome(await set())).toBe("200");
    expect(outcome(await set())).toBe("410 link-not-valid");
    expect([await signIn("gus"), await signIn("gus", "another password")].map(outcome)).toEqual([
      "401 wrong-sign-in",
      "200",
    ]);
  });

  test("sign-ins are listed and ended, one's own alone", async () => {
    const first = await signUp((await invited()).token, "hal");
    const [here, there] = [asking(school, browserOf(first)), asking(school, browserOf(await signIn("hal")))];
    const { signIns } = (await here.get("/api/me/sign-ins")).json();
    expect(signIns.map(({ isThis }: { isThis: boolean }) => isThis).toSorted()).toEqual([false, true]);
    const other = signIns.find(({ isThis }: { isThis: boolean }) => !isThis).id;
    expect(outcome(await head.post(`/api/me/sign-ins/${other}/end`))).toBe("404 no-such-thing");
    expect(outcome(await here.post(`/api/me/sign-ins/${other}/end`))).toBe("204");
    expect(outcome(await there.get("/api/me"))).toBe("401 not-signed-in");
    expect((await here.get("/api/me/sign-ins")).json().signIns).toHaveLength(1);
  });
});
