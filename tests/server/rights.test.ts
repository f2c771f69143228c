import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { COOKIES } from "../../src/server/http/whoAsks";
import { passwordHash } from "../../src/server/security/passwords";
import { newServerId } from "../../src/server/security/secrets";
import { classServer } from "../../src/server/start/classServer";
import { RIGHTS, type RightsRow } from "./rights/table";
import { makeThings, signedInAgain, type Things } from "./rights/things";
import type { Asker } from "./support/asking";
import { ENGINES, type TestDatabase } from "./support/engines";
import { type TestServer, testSchool, testServer } from "./support/testSchool";

/** Everybody who asks, and what they are where a route needs a role. */
const ASKERS = [
  { asker: "anyone", is: "anyone", isOfSchool: false },
  { asker: "a bench", is: "bench", isOfSchool: true },
  { asker: "a bench of another person", is: "bench", isOfSchool: true },
  { asker: "a bench of another school", is: "bench", isOfSchool: false },
  { asker: "an instructor of another school", is: "instructor", isOfSchool: false },
  { asker: "the head of another school", is: "head", isOfSchool: false },
  { asker: "an instructor", is: "instructor", isOfSchool: true },
  { asker: "the head", is: "head", isOfSchool: true },
] as const;

type AskerRow = (typeof ASKERS)[number];

/** Whose the thing of "one" is. */
const OWNERS: readonly string[] = ["a bench", "an instructor"];

/** What somebody who asks for something gets: "done", or the status of the refusal. */
function expected({ needs, whose }: RightsRow, { asker, is, isOfSchool }: AskerRow): string {
  if (needs === "anyone") return "done";
  // A browser shows a bench's cookie or an instructor's: whoever has not the one that is needed is nobody.
  if ((needs === "bench") !== (is === "bench") || is === "anyone") return "401";
  if (needs === "head" && is !== "head") return "403";
  if (whose === "one") return OWNERS.includes(asker) ? "done" : "404";
  return whose === "school" && !isOfSchool ? "404" : "done";
}

const filled = (route: string, things: Things): string =>
  route.replace(/:(\w+)/g, (_, name: string) => String((things as unknown as Record<string, unknown>)[name]));

type Answer = Awaited<ReturnType<TestServer["server"]["inject"]>>;

/** "done", or the status of a refusal. */
const outcomeOf = ({ statusCode }: Answer): string => (statusCode < 400 ? "done" : String(statusCode));

/** What nobody of another school, and nobody who may not, ever sees of things. */
const idsOf = ({ personId, ...things }: Things): string[] => [
  `person ${personId}`,
  things.classId,
  things.deviceId,
  things.instructorId,
  things.linkId,
];

/** A server's routes, each "METHOD /address". */
async function routesOf({ world }: TestServer): Promise<string[]> {
  const routes: string[] = [];
  const server = await classServer(world, {
    onRoute: ({ method, url }) => routes.push(...[method].flat().map((one) => `${one} ${url}`)),
  });
  await server.close();
  return routes.filter((route) => !route.startsWith("HEAD "));
}

describe.each(ENGINES)("on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  const teachers = { head: "", instructor: "", otherHead: "", otherInstructor: "" };
  const schools = { own: "", other: "" };
  /** Benches of somebody else, of this school and of another. */
  const benches: Record<keyof typeof schools, Asker> = { own: {}, other: {} };

  async function addInstructor(schoolId: string): Promise<string> {
    const { world } = school;
    const id = newServerId(world);
    const row = { id, school_id: schoolId, name: "teacher", login: id, role: "instructor" as const };
    const hash = await passwordHash("a long password", world);
    await world.database
      .insertInto("instructors")
      .values({ ...row, password_hash: hash, created_at: world.now() })
      .execute();
    return id;
  }

  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    for (const [name, head, instructor] of [
      ["own", "head", "instructor"],
      ["other", "otherHead", "otherInstructor"],
    ] as const) {
      schools[name] = (await testSchool(school, name)).schoolId;
      const { id } = await database.query
        .selectFrom("instructors")
        .select("id")
        .where("school_id", "=", schools[name])
        .executeTakeFirstOrThrow();
      teachers[head] = id;
      teachers[instructor] = await addInstructor(schools[name]);
      benches[name] = benchOf(await thingsOf(name));
    }
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const thingsOf = (name: keyof typeof schools) =>
    makeThings(schools[name], name === "own" ? teachers.instructor : teachers.otherInstructor, school.world);

  async function signedIn(name: keyof typeof schools, teacher: keyof typeof teachers): Promise<Asker> {
    const { secret, csrf } = await signedInAgain(schools[name], teachers[teacher], school.world);
    return { cookies: { [COOKIES.instructor]: secret }, headers: { "x-csrf": csrf } };
  }

  const benchOf = ({ bench }: Things): Asker => ({ cookies: { [COOKIES.bench]: bench } });

  /** What somebody's browser sends along. @param things - of the school that is asked about */
  function browserOf(asker: AskerRow["asker"], things: Things): Asker | Promise<Asker> {
    switch (asker) {
      case "anyone":
        return {};
      case "a bench":
        return benchOf(things);
      case "a bench of another person":
        return benches.own;
      case "a bench of another school":
        return benches.other;
      case "an instructor of another school":
        return signedIn("other", "otherInstructor");
      case "the head of another school":
        return signedIn("other", "otherHead");
      case "an instructor":
        return signedIn("own", "instructor");
      case "the head":
        return signedIn("own", "head");
    }
  }

  const changesOf = async () => {
    const { entries } = await database.query
      .selectFrom("audit")
      .select(({ fn }) => fn.countAll<number>().as("entries"))
      .where("school_id", "=", schools.own)
      .executeTakeFirstOrThrow();
    return Number(entries);
  };

  function ask({ route, body }: RightsRow, { cookies = {}, headers = {} }: Asker, things: Things) {
    const [method, address = ""] = route.split(" ");
    const payload = method === "GET" ? {} : { payload: body?.(things) ?? {} };
    return school.server.inject({
      method: method as "GET",
      url: filled(address, things),
      cookies,
      headers,
      ...payload,
    });
  }

  test("every route is in the table of rights, and needs what the table says", async () => {
    const routes = await routesOf(school);
    const why = "add a row for it in tests/server/rights/table.ts";
    expect(
      routes.filter((route) => !RIGHTS.some((row) => shape(row.route) === shape(route))),
      why,
    ).toEqual([]);
    expect(RIGHTS.filter((row) => !routes.some((route) => shape(row.route) === shape(route)))).toEqual([]);
  });

  describe.each(RIGHTS.filter(({ isOpen }) => isOpen !== true))("$route", (row) => {
    /** Things of the school that no request has changed yet. */
    let unused: Things | undefined;
    test.each(ASKERS)("as $asker", async (who) => {
      const isUsedUp = expected(row, who) === "done" && row.whose !== "own";
      unused ??= await thingsOf("own");
      const things = unused;
      if (isUsedUp) unused = undefined;
      const before = await changesOf();
      const answer = await ask(row, await browserOf(who.asker, things), things);
      const got = outcomeOf(answer);
      expect(got, answer.body).toBe(expected(row, who));
      if (row.needs === "anyone" || (got === "done" && who.isOfSchool)) return;
      // Whoever may not, or is of another school, changes nothing of this one and sees nothing of it.
      expect(await changesOf()).toBe(before);
      expect(idsOf(things).filter((id) => answer.body.includes(id))).toEqual([]);
    });
  });
});

/** A route with its parameters unnamed. */
const shape = (route: string): string => route.replace(/:\w+/g, ":");
