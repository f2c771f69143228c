import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inviteFirst } from "../../../src/server/people/links";
import { type Asking, asking, benchCookies, outcome, testClass } from "../support/asking";
import { ENGINES, type TestDatabase } from "../support/engines";
import { SAT_SHEET } from "../support/satSitting";
import { MORNING, type TestServer, testSchool, testServer } from "../support/testSchool";

/** A right-to-left override, the sign for a line break, half a pair, NUL and a space of no width. */
const HIDDEN = ["Ann\u202e", "An\u2028n", "Ann\ud83d", "A\0nn", "An\u200bn", "Ann\nHill"];
const WELL = "علی\u200cرضا";

type Answer = Awaited<ReturnType<Asking["get"]>>;

interface Place {
  readonly where: string;
  readonly ask: (name: string) => Promise<Answer>;
}

describe.each(ENGINES)("hidden signs on $engine", ({ open }) => {
  let database: TestDatabase;
  let school: TestServer;
  let head: Asking;
  let places: Record<string, Place["ask"]> = {};
  beforeAll(async () => {
    database = await open();
    school = await testServer(database);
    head = asking(school, await testSchool(school, "hill"));
    const anyone = asking(school);
    const { classId, code } = await testClass(head);
    const { id } = (await head.post(`/api/classes/${classId}/people`, { name: "Quillon" })).json();
    const { cards } = (await head.post(`/api/classes/${classId}/cards`, {})).json();
    const invited = async () => (await head.post("/api/links", { role: "instructor" })).json().token;
    const password = "four plain words here";
    const terms = { kind: "test", from: MORNING, until: MORNING + 3_600_000, attempts: 1, people: null, extraTime: [] };
    const assign = (title: string) =>
      head.post("/api/assignments", { classId, sheet: { ...SAT_SHEET, title }, ...terms });
    const joined = await anyone.post("/api/join", { code, name: "Mibsy", bench: "Bench 1" });
    const assignmentId = (await assign("A sheet")).json().id;
    await asking(school, benchCookies(joined)).post(`/api/bench/people/${joined.json().person.id}/sittings`, {
      assignmentId,
      sittingId: "sat",
    });
    let version = 1;
    places = {
      "the name of a school": async (name) =>
        anyone.post("/api/schools", {
          token: await inviteFirst(school.world),
          school: name,
          name: "Ada",
          login: `of ${name.length}`,
          password,
        }),
      "the name of its head": async (name) =>
        anyone.post("/api/schools", {
          token: await inviteFirst(school.world),
          school: "Vale",
          name,
          login: `head ${name.length}`,
          password,
        }),
      "the name of an instructor": async (name) =>
        anyone.post("/api/instructors", { token: await invited(), name, login: `one ${name.length}`, password }),
      "a name to sign in with": async (login) =>
        anyone.post("/api/instructors", { token: await invited(), name: "Bo", login, password }),
      "the name of a class": (name) => head.post("/api/classes", { name }),
      "the new name of a class": (name) => head.post(`/api/classes/${classId}/name`, { name }),
      "the name of who joins": (name) => anyone.post("/api/join", { code, name, bench: "Bench 1" }),
      "the name of a bench": (bench) => anyone.post("/api/join", { code, name: "Dorvik", bench }),
      "the name of a bench where a card is shown": (bench) =>
        anyone.post("/api/join/card", { token: cards[0].token, bench }),
      "the name of a bench where the code of a card is typed": (bench) =>
        anyone.post("/api/join/card-code", { code: cards[0].code, bench }),
      "a name for the roster": (name) => head.post(`/api/classes/${classId}/people`, { name: `${name} R` }),
      "the new name of a person": async (name) => {
        const changed = await head.post(`/api/people/${id}`, { version, name: `${name} P` });
        if (changed.statusCode < 400) version += 1;
        return changed;
      },
      "the title of a sheet": assign,
      "a comment": (text) => head.post("/api/sittings/sat/comments", { text }),
    };
  });
  afterAll(async () => {
    await school.server.close();
    await database.remove();
  });

  const WHERE = [
    "the name of a school",
    "the name of its head",
    "the name of an instructor",
    "a name to sign in with",
    "the name of a class",
    "the new name of a class",
    "the name of who joins",
    "the name of a bench",
    "the name of a bench where a card is shown",
    "the name of a bench where the code of a card is typed",
    "a name for the roster",
    "the new name of a person",
    "the title of a sheet",
    "a comment",
  ];

  test("every place is tried", () => {
    expect(Object.keys(places)).toEqual(WHERE);
  });

  const isComment = (where: string) => where === "a comment";
  const asked = (where: string, text: string) => places[where]?.(text) ?? Promise.reject(new Error(where));

  test.each(WHERE)("%s is refused with them, with a sentence, and taken in every script", async (where) => {
    const code = isComment(where) ? "400 hidden-characters" : "400 unreadable-name";
    const refused = HIDDEN.filter((text) => !isComment(where) || !text.includes("\n"));
    for (const text of refused) expect(outcome(await asked(where, text)), JSON.stringify(text)).toBe(code);
    expect((await asked(where, WELL)).statusCode).toBeLessThan(300);
  });

  test("a comment has lines", async () => {
    expect((await asked("a comment", "Slower.\nRest longer.")).statusCode).toBe(200);
  });

  test("a file of names has them refused row by row", async () => {
    const { classId } = await testClass(head);
    const csv = ["Ann\u202e", "Bo\u200f", WELL, "Cy"].join("\n");
    const { rows } = (await head.post(`/api/classes/${classId}/roster/preview`, { csv })).json();
    expect(rows.map(({ outcome: what }: { outcome: string }) => what)).toEqual([
      "refused",
      "refused",
      "matched",
      "added",
    ]);
  });
});
