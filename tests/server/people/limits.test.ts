import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { type Guess, trying } from "../../../src/server/limits/guesses";
import { classServer } from "../../../src/server/start/classServer";
import { type Asking, asking, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { type TestServer, testSchool, testServer } from "../support/testSchool";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

describe.each(ENGINES)("on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  /** Another server on the same database. */
  let second: TestServer;
  let head: Asking;
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    second = await testServer(database, 2);
    head = asking(school, await testSchool(school, "hill"));
  });
  /** Lets time pass at both servers. */
  const pass = (ms: number) => {
    for (const server of [school, second]) server.pass(ms);
  };
  // Everything is forgotten before the next test.
  afterEach(() => pass(HOUR_MS + MINUTE_MS));
  afterAll(async () => {
    await school.server.close();
    await second.server.close();
    await database.remove();
  });

  const wrong = (server: TestServer, guesses: readonly Guess[]) =>
    trying(guesses, server.world, async () => {
      throw new Error("wrong");
    }).catch((error: Error) => (error.message.includes("wait") ? error.message.match(/\d+ s/)?.[0] : error.message));

  test("waits begin with a second, double, and end at their longest", async () => {
    const guess: Guess = ["pin-of", "somebody"];
    const waits: unknown[] = [];
    for (let k = 0; k < 4; k++) expect(await wrong(school, [guess])).toBe("wrong");
    for (let k = 0; k < 12; k++) {
      expect(await wrong(school, [guess])).toBe("wrong");
      const wait = await wrong(school, [guess]);
      waits.push(wait);
      pass(1000 * Number.parseInt(String(wait), 10) - 1);
      expect(await wrong(school, [guess])).toBe("1 s");
      pass(1);
    }
    expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900].map((seconds) => `${seconds} s`));
  });

  test("who is right keeps nobody waiting, not even where a clock is behind or began a little earlier", async () => {
    const guess: Guess = ["code-from", "a whole class"];
    school.pass(50);
    const right = async (server: TestServer) => trying([guess], server.world, async () => "right");
    for (const server of [school, second, school, second]) expect(await right(server)).toBe("right");
    second.pass(50);
  });

  test("two servers count together, and of many tries at once none is missed", async () => {
    const guess: Guess = ["password-of", "one and the same"];
    const both = await Promise.all(Array.from({ length: 20 }, (_, k) => wrong(k % 2 === 0 ? school : second, [guess])));
    expect(both.filter((answer) => answer === "wrong")).toHaveLength(5);
    expect(await wrong(second, [guess])).toBe("1 s");
    expect(await wrong(second, [["password-of", "somebody else"]])).toBe("wrong");
  });

  test("a right try forgets what was aimed at, and frees no address of its wrong ones", async () => {
    const [of, from]: Guess[] = [
      ["password-of", "a name"],
      ["link-from", "an address"],
    ];
    for (let k = 0; k < 4; k++) await wrong(school, [of as Guess]);
    for (let k = 0; k < 29; k++) await wrong(school, [from as Guess]);
    expect(await trying([of as Guess, from as Guess], school.world, async () => "in")).toBe("in");
    for (let k = 0; k < 4; k++) expect(await wrong(school, [of as Guess])).toBe("wrong");
    expect(await wrong(school, [from as Guess])).toBe("wrong");
    expect(await wrong(school, [from as Guess])).toBe("1 s");
  });

  test("a name that nobody has waits as one that somebody has", async () => {
    const tries = async (login: string) => {
      const answers: string[] = [];
      for (let k = 0; k < 7; k++) {
        const { statusCode, body } = await asking(school).post("/api/sign-in", { login, password: "wrong" });
        answers.push(`${statusCode} ${body}`);
      }
      return answers;
    };
    const known = await tries("hill");
    expect(known).toEqual(await tries("nobody"));
    expect(known.map((answer) => answer.slice(0, 3))).toEqual(["401", "401", "401", "401", "401", "429", "429"]);
    const right = () => asking(second).post("/api/sign-in", { login: "HILL ", password: "a long password" });
    expect(outcome(await right())).toBe("429 wait-first");
    pass(1000);
    expect(outcome(await right())).toBe("200");
  });

  test("codes are tried from an address, and right ones count for nothing", async () => {
    const { code } = await testClass(head);
    const join = (sent: string, remoteAddress: string) =>
      school.server.inject({
        method: "POST",
        url: "/api/join",
        remoteAddress,
        payload: { code: sent, name: "Ann", bench: "b" },
      });
    for (let k = 0; k < 60; k++) await join("AAAA-AAAA", `2001:db8::${k}`);
    expect(outcome(await join(code, "2001:db8:0:0:ffff::1"))).toBe("429 wait-first");
    expect(outcome(await join(code, "2001:db8:0:1::1"))).toBe("200");
    for (let k = 0; k < 70; k++) expect((await join(code, "10.0.0.1")).statusCode).toBe(200);
  });

  test("a PIN is guarded by its person, wherever it is tried from", async () => {
    const { code } = await testClass(head);
    const join = (pin: string, k: number) =>
      school.server.inject({
        method: "POST",
        url: "/api/join",
        remoteAddress: `10.1.0.${k}`,
        payload: { code, name: "Bea", bench: "b", pin },
      });
    expect(outcome(await join("1234", 0))).toBe("200");
    for (let k = 1; k <= 5; k++) expect(outcome(await join("0000", k))).toBe("403 wrong-pin");
    expect(outcome(await join("1234", 6))).toBe("429 wait-first");
  });

  test("a wait that a clock set which was a year ahead is as long as any, and as strict", async () => {
    const guess: Guess = ["password-of", "somebody else"];
    const year = 365 * 24 * HOUR_MS;
    pass(year);
    for (let k = 0; k < 5; k++) expect(await wrong(school, [guess])).toBe("wrong");
    pass(-year);
    expect(await wrong(school, [guess])).toBe("60 s");
    pass(MINUTE_MS - 1);
    expect(await wrong(second, [guess])).toBe("1 s");
    pass(1);
    expect(await wrong(school, [guess])).toBe("wrong");
  });

  test("floods of requests are held back, by address and by who asks", async () => {
    const server = await classServer(school.world, { floods: { address: 8, asker: 3 } });
    const from = (remoteAddress: string, more: object = {}) =>
      server.inject({ url: "/api/me", remoteAddress, ...more }).then(outcome);
    const browser = await testSchool(school, "flood");
    const some: string[] = [];
    for (let k = 0; k < 4; k++) some.push(await from(`10.2.0.${k}`, browser));
    expect(some).toEqual(["200", "200", "200", "429 wait-first"]);
    const many: string[] = [];
    for (let k = 0; k < 9; k++) many.push(await from("10.3.0.1"));
    expect(many).toEqual([...Array(8).fill("401 not-signed-in"), "429 wait-first"]);
    expect(await from("10.3.0.2")).toBe("401 not-signed-in");
    await server.close();
  });

  test.each([
    { isBehindProxy: true, seen: "10.9.9.9" },
    { isBehindProxy: false, seen: "10.0.0.5" },
  ])("behind a proxy ($isBehindProxy) nobody writes their own address", async ({ isBehindProxy, seen }) => {
    const server = await classServer(school.world, { isBehindProxy });
    const headers = { "x-forwarded-for": "1.2.3.4, 10.9.9.9" };
    const payload = { code: "x", name: "Ann", bench: "b" };
    await database.query.deleteFrom("tries").execute();
    await server.inject({ method: "POST", url: "/api/join", remoteAddress: "10.0.0.5", headers, payload });
    await expect(wrong(school, [["code-from", seen]])).resolves.toBe("wrong");
    const tries = await database.query.selectFrom("tries").select("count").execute();
    expect(tries).toEqual([{ count: 2 }]);
    await server.close();
  });
});
